/** Rules of energy codes as data: id, edition, thresholds, formula and source, and their verdict with its margin. */
package headrace.rule;

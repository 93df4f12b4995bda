/** What-if controls as values: what is varied, over what, and what is drawn at each position. */
package headrace.report.whatif;

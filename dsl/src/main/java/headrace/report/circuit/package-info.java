/** How circuits show themselves. */
package headrace.report.circuit;

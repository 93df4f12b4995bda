/** How exercises and what was said to answers show themselves. */
package headrace.report.lesson;

/** The page of a run: one HTML file that holds everything it shows, loads nothing and runs nothing. */
package headrace.kernel.headless.page;

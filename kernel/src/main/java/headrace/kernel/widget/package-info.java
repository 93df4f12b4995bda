/** Shows what-ifs as live controls of a front end, over the widget protocol. Knows no socket and no JSON. */
package headrace.kernel.widget;

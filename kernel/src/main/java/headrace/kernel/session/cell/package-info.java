/**
 * How a cell is compiled: so that it can be stopped, cannot end the process, and leaves behind what it declares. Knows
 * Groovy; knows nothing of output or errors.
 */
package headrace.kernel.session.cell;

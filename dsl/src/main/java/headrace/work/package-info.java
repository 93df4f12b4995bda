/** Progress and interruption of long calculations: a calculation reports here, a door (notebook, terminal) shows it. */
package headrace.work;

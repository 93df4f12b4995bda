/** The program at the command line: one class for each command. */
package headrace.kernel.cli;

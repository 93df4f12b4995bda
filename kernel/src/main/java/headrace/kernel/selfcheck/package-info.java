/** Starts the installed kernel as a front end would. */
package headrace.kernel.selfcheck;

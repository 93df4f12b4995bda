/**
 * What could stand at the cursor, and what stands there: for a text that is half-written, while a cell may be running,
 * and without running any code of the user.
 */
package headrace.kernel.session.assist;

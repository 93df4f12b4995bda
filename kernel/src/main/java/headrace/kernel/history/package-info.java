/** The cells of earlier sessions, kept in files of the user's. */
package headrace.kernel.history;

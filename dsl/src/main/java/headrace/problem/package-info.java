/**
 * What the user reads when a calculation cannot be done, or touched a limit on the way: one exception, and notes.
 *
 * <p>Depends on nothing, so that every other package may use it. The problems themselves are named in the packages that
 * raise them; a test gathers them all and holds them against {@code docs/troubleshooting.md}.
 */
package headrace.problem;

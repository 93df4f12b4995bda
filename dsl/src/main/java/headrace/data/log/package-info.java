/**
 * Reads the trend log of a building system, a row at a time, and says which unit was taken for each column and why.
 *
 * <p>A log is read whole or refused: what was left out on the way is listed with its line, and a unit or a clock that
 * the file leaves open is asked for.
 */
package headrace.data.log;

package headrace.kernel.history;

/**
 * A cell that once ran.
 *
 * @param session the number of its session, from 1
 * @param count its number in the session, from 1
 * @param code its text
 * @param result its result as plain text, or empty
 */
public record PastCell(int session, int count, String code, String result) {}

package headrace.kernel.session;

/**
 * A cell that was kept.
 *
 * @param count its number, from 1
 * @param code its text
 * @param result its result as plain text, or empty if it had none
 */
public record HistoryEntry(int count, String code, String result) {}

package headrace.kernel.message;

/**
 * Asks the user of a front end for a line.
 *
 * @param prompt what is shown before the field
 * @param secret whether the answer is hidden while typed
 */
public record Question(String prompt, boolean secret) {}

package headrace.kernel.session;

/**
 * Whether code could run as it stands.
 *
 * @param state what is the matter with it
 * @param indent what the next line should begin with when it needs more
 */
public record Completeness(State state, String indent) {
    /** What is the matter with the code. */
    public enum State {
        /** It can run. */
        COMPLETE,
        /** It needs more lines. */
        INCOMPLETE,
        /** It can never run. */
        INVALID
    }
}

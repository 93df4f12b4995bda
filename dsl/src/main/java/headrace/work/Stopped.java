package headrace.work;

/**
 * Ends a calculation because its user asked for that.
 *
 * <p>An {@link Error}, so that a script's {@code catch (Exception e)} does not keep it running.
 */
public final class Stopped extends Error {
    private static final long serialVersionUID = 1L;

    /** Creates the error without the cost of a stack trace. */
    public Stopped() {
        super("Stopped by the user", null, false, false);
    }
}

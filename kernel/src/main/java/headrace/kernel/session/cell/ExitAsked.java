package headrace.kernel.session.cell;

/** A cell asked to end the process. An {@link Error}, so that {@code catch (Exception e)} does not hide it. */
public final class ExitAsked extends Error {
    private static final long serialVersionUID = 1L;

    private final int status;

    /** Creates the error for an exit status. */
    public ExitAsked(int status) {
        super("System.exit(" + status + ")");
        this.status = status;
    }

    /** Returns the exit status that was asked for. */
    public int status() {
        return status;
    }
}

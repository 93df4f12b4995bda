package headrace.kernel.session.cell;

/** What the calls that end a process become inside a cell. Called by woven code. */
public final class Exits {
    private Exits() {}

    /** Stands in for {@link System#exit(int)} and {@link Runtime#exit(int)}. */
    public static void exit(int status) {
        throw new ExitAsked(status);
    }

    /** Stands in for {@link Runtime#exit(int)} and {@link Runtime#halt(int)}. */
    public static void exit(Runtime runtime, int status) {
        throw new ExitAsked(status);
    }
}

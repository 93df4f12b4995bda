package headrace.kernel.cli;

/** What the program says to the shell when it ends. */
final class ExitCode {
    /** Everything that was asked was done. */
    static final int DONE = 0;

    /** A cell failed. */
    static final int CELL_FAILED = 1;

    /** The command line is not understood. */
    static final int USAGE = 2;

    /** A file is absent, or cannot be read as what it should be. */
    static final int BAD_FILE = 3;

    /** The results cannot be written where they should go. */
    static final int NOT_WRITTEN = 4;

    /** The kernel cannot listen where the front end wants it to. 5 is the launcher's, for a missing JDK. */
    static final int PORT_TAKEN = 6;

    /** The installed kernel does not work as it should. */
    static final int NOT_WELL = 7;

    /** A defect of this program. */
    static final int DEFECT = 70;

    /** A cell took longer than it may, as shells say it of a command. */
    static final int TIMED_OUT = 124;

    /** Stopped by the user, as shells say it: 128 and the number of the signal. */
    static final int STOPPED = 130;

    private ExitCode() {}
}

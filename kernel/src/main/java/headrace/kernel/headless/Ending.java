package headrace.kernel.headless;

/** How a run ended. */
public enum Ending {
    /** Every cell ran. */
    COMPLETE,
    /** A cell failed; those after it did not run. */
    FAILED,
    /** A cell took longer than it may; those after it did not run. */
    TIMED_OUT,
    /** The user stopped the run. */
    STOPPED
}

package headrace.kernel.headless;

/** How a run ended. */
public enum Ending {
    /** Every cell ran. */
    COMPLETE,
    /** A cell failed; those after it did not run. */
    FAILED,
    /** The user stopped the run. */
    STOPPED
}

package headrace.kernel.session;

import headrace.kernel.display.MimeBundle;

/** How the run of a cell ended. */
public sealed interface Outcome {
    /** The cell ran; its last line had no value. */
    record Done() implements Outcome {}

    /** The cell ran; its last line had this value. */
    record Value(MimeBundle bundle) implements Outcome {}

    /** The cell did not compile, or failed, or was stopped. */
    record Failed(Fault fault) implements Outcome {}
}

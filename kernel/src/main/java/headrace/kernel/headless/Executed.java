package headrace.kernel.headless;

import headrace.kernel.notebook.Notebook;
import java.util.Optional;

/**
 * A notebook as a run left it.
 *
 * @param notebook the cells with their outputs
 * @param ending how the run ended
 * @param last the number of the cell at which it ended
 * @param left how many cells of code did not run any more
 * @param failure the name of the failure that ended it, if one did
 */
record Executed(Notebook notebook, Ending ending, int last, int left, Optional<String> failure) {
    /** Says how the run ended. */
    String verdict() {
        return switch (ending) {
            case COMPLETE -> last == 1 ? "The one cell of code ran." : "All " + last + " cells of code ran.";
            case FAILED -> "Cell " + last + " failed (" + failure.orElse("") + ")" + rest();
            case TIMED_OUT -> "Cell " + last + " took longer than it may" + rest();
            case STOPPED -> "The run was stopped by its user at cell " + last + rest();
        };
    }

    private String rest() {
        return switch (left) {
            case 0 -> ".";
            case 1 -> "; the cell after it did not run.";
            default -> "; the " + left + " cells after it did not run.";
        };
    }

    Executed with(Notebook other) {
        return new Executed(other, ending, last, left, failure);
    }
}

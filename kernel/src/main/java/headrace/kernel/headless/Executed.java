package headrace.kernel.headless;

import headrace.kernel.notebook.Notebook;
import java.util.Optional;

/**
 * A notebook as a run left it.
 *
 * @param notebook the cells with their outputs
 * @param ending how the run ended
 * @param last the number of the cell at which it ended
 * @param failure the name of the failure that ended it, if one did
 */
record Executed(Notebook notebook, Ending ending, int last, Optional<String> failure) {
    /** Says how the run ended. */
    String verdict() {
        return switch (ending) {
            case COMPLETE -> "All " + last + " cells of code ran.";
            case FAILED -> "Cell " + last + " failed (" + failure.orElse("") + "); the cells after it did not run.";
            case STOPPED -> "The run was stopped at cell " + last + " by its user.";
        };
    }

    Executed with(Notebook other) {
        return new Executed(other, ending, last, failure);
    }
}

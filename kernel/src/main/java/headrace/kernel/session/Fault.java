package headrace.kernel.session;

import java.util.List;

/**
 * A failure, worded for the engineer who wrote the cell.
 *
 * @param name a short name of the kind of error: a problem's anchor, or the class of an exception
 * @param message what went wrong
 * @param lines what is shown, a line each: the message, the cell's own lines with a caret, no frame of the machinery
 */
public record Fault(String name, String message, List<String> lines) {
    /** Keeps the lines from changing. */
    public Fault {
        lines = List.copyOf(lines);
    }
}

package headrace.kernel.notebook;

import headrace.kernel.display.MimeBundle;
import java.util.List;

/** Something that a cell of code left behind when it ran, as a notebook file keeps it. */
public sealed interface CellOutput {
    /**
     * Text that the code printed.
     *
     * @param name {@code stdout} or {@code stderr}
     * @param text what was printed
     */
    record Stream(String name, String text) implements CellOutput {}

    /** Something that the code asked to show. */
    record Shown(MimeBundle bundle) implements CellOutput {}

    /**
     * The value of the cell's last line.
     *
     * @param bundle the value as media types
     * @param count the number of the cell in the run, from 1
     */
    record Result(MimeBundle bundle, int count) implements CellOutput {}

    /**
     * The failure that ended the cell.
     *
     * @param name a short name of the kind of error
     * @param message what went wrong
     * @param lines what is shown, a line each
     */
    record Failure(String name, String message, List<String> lines) implements CellOutput {
        /** Keeps the lines from changing. */
        public Failure {
            lines = List.copyOf(lines);
        }
    }
}

package headrace.kernel.notebook;

import java.util.List;

/**
 * A notebook: cells in order, and what the file says about them.
 *
 * <p>Its outputs are those of a run of this program. Outputs that stand in a file are not read: they may be stale, and
 * may hold markup or scripts of somebody else.
 *
 * <p>Source: the notebook format of the Jupyter project, 4.0 to 4.5.
 *
 * @param metadata what the file says about the notebook as a whole
 * @param cells the cells, each with an id of its own
 */
public record Notebook(Fields metadata, List<Cell> cells) {
    /** Gives an id to each cell whose own is missing, ill-formed or taken, always the same for the same cells. */
    public Notebook {
        cells = Ids.complete(cells);
    }

    /**
     * Reads the bytes of a notebook file in the format 4.0 to 4.5.
     *
     * @param file the file's name, for messages
     * @throws headrace.problem.Refusal if they are not such a notebook, with the line and column
     */
    public static Notebook of(byte[] bytes, String file) {
        return of(NotebookText.of(bytes, file), file);
    }

    /**
     * Reads the text of a notebook file.
     *
     * @param file the file's name, for messages
     * @throws headrace.problem.Refusal if the text is not such a notebook, with the line and column
     */
    public static Notebook of(String text, String file) {
        return new NotebookReader(text, file).notebook();
    }

    /** Returns the notebook with other cells. */
    public Notebook withCells(List<Cell> others) {
        return new Notebook(metadata, others);
    }

    /** Returns the notebook with other metadata. */
    public Notebook withMetadata(Fields other) {
        return new Notebook(other, cells);
    }

    /** Returns the text of the notebook file in the format 4.5. */
    public String toJson() {
        return NotebookWriter.write(this);
    }
}

package headrace.kernel.notebook;

import headrace.problem.Problem;

/** What can be wrong with a notebook file. */
public enum NotebookProblem implements Problem {
    /** The file cannot be read as text, or its JSON is not well formed. */
    BROKEN_NOTEBOOK,
    /** The file is well-formed JSON, but not that of a notebook. */
    NOT_A_NOTEBOOK,
    /** The notebook is in another edition of the format. */
    NOTEBOOK_FORMAT_NOT_READ
}

package headrace.kernel.headless;

import headrace.problem.Problem;

/** Why a notebook or script is not run, or its results are not written. */
public enum RunProblem implements Problem {
    /** There is no file of that name, or it cannot be read. */
    NOTHING_TO_RUN,
    /** The file is neither a notebook nor a script of this program. */
    NOT_A_SCRIPT,
    /** The bytes of a script are no text in UTF-8. */
    SCRIPT_NOT_UTF_8,
    /** The notebook is written in another programming language. */
    NOTEBOOK_IN_ANOTHER_LANGUAGE,
    /** The results would be written over the input or over a file that is none of this program's. */
    WOULD_OVERWRITE,
    /** The folder for the results cannot be made or written to. */
    RESULTS_NOT_WRITTEN,
    /** A parameter that the notebook does not have, or that is not written as name=value. */
    WRONG_PARAMETER
}

package headrace.kernel.session.groovy;

import headrace.problem.Problem;

/** What can be wrong with the run of a cell itself. */
public enum SessionProblem implements Problem {
    /** The cell's text is not of its language. */
    CELL_NOT_UNDERSTOOD,
    /** The first line of the cell names a language that there is not. */
    UNKNOWN_LANGUAGE,
    /** A method or class was used that names what is not defined yet. */
    UNFINISHED_CODE,
    /** The cell was stopped by its user. */
    CELL_STOPPED,
    /** The cell was told to stop and could not. */
    CELL_LEFT_BEHIND,
    /** A call went deeper than the stack. */
    TOO_DEEP,
    /** The memory ran out. */
    MEMORY_USED_UP,
    /** The cell asked to end the process. */
    EXIT_REFUSED,
    /** The cell asked for input where nobody can answer. */
    NOBODY_TO_ASK
}

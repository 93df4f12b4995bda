package headrace.kernel.session.groovy;

import headrace.problem.Problem;

/** What can be wrong with the run of a cell itself. */
public enum SessionProblem implements Problem {
    /** The cell's text is not Groovy. */
    CELL_NOT_UNDERSTOOD,
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

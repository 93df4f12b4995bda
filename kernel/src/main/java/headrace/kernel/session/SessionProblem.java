package headrace.kernel.session;

import headrace.problem.Problem;

/** What can be wrong with the run of a cell itself. */
public enum SessionProblem implements Problem {
    /** The cell asked for input where nobody can answer. */
    NOBODY_TO_ASK
}

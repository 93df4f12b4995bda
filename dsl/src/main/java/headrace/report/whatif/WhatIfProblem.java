package headrace.report.whatif;

import headrace.problem.Problem;

/** What can be wrong with a what-if. */
public enum WhatIfProblem implements Problem {
    /** Nothing to vary, or a range without two ends, or more positions than anyone could move through. */
    IMPOSSIBLE_CONTROL,

    /** More to draw at once than anyone could look at. */
    TOO_MANY_PARTS
}

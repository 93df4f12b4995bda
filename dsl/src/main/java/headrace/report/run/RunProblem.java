package headrace.report.run;

import headrace.problem.Problem;

/** What can be wrong with the record of a run. */
public enum RunProblem implements Problem {
    /** Results that show nothing. */
    NOTHING_TO_RECORD,
    /** A table that is no record of a run. */
    NO_RUN_RECORD
}

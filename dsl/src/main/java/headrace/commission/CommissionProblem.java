package headrace.commission;

import headrace.problem.Problem;

/** What can be wrong with a commissioning sheet, and what it can have to say. */
public enum CommissionProblem implements Problem {
    /** A curve whose test does not reach no flow. */
    SHUT_OFF_NOT_TESTED,
    /** Speeds of a sheet that the pump set does not have. */
    IMPOSSIBLE_SHEET,
    /** Readings from which nothing follows. */
    NOTHING_ENTERED,
    /** Readings that none of the known causes explains. */
    UNEXPLAINED_READINGS,
    /** Readings that two causes explain nearly as well. */
    CAUSE_UNDECIDED
}

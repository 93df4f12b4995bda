package headrace.rule.index;

import headrace.problem.Problem;

/** What can be wrong with an energy index, and what an index can have to say about itself. */
public enum IndexProblem implements Problem {
    /** A pump of a size, a speed or a liquid to which the regulation does not apply. */
    OUTSIDE_INDEX_SCOPE,
    /** A type of pump that the regulation does not name. */
    UNKNOWN_PUMP_TYPE,
    /** Readings that do not stand at the four flows of the load profile, or that cannot be. */
    INDEX_READINGS_DO_NOT_FIT,
    /** Note: the curve was moved from its own speed to the nominal speed of the regulation. */
    MOVED_TO_NOMINAL_SPEED
}

package headrace.energy.load;

import headrace.problem.Problem;

/** What can be wrong with the load of a year, and what it can have to say about itself. */
public enum LoadProblem implements Problem {
    /** Hours that are no whole year. */
    IMPOSSIBLE_YEAR,
    /** A load below 0 or above 120 % of design. */
    LOAD_OUT_OF_RANGE,
    /** Hours above design load. */
    LOAD_ABOVE_DESIGN,
    /** Hours in which the weather asks for more load than was to be taken. */
    LOAD_CAPPED,
    /** An hour that a file leaves out. */
    HOUR_MISSING,
    /** An hour that a file has twice, or that stands before the one ahead of it. */
    HOUR_TWICE,
    /** A missing hour in one season and a double one in another: the clock was changed. */
    DAYLIGHT_SAVING,
    /** Gaps in a log that were left out. */
    GAPS_IN_LOG,
    /** Hours of a log that were stretched to a year. */
    STRETCHED_TO_A_YEAR,
    /** A temperature that no place on earth has. */
    WEATHER_OUT_OF_RANGE,
    /** A change point that makes no load, or one below 0. */
    IMPOSSIBLE_CHANGE_POINT,
    /** A load that a way to turn load into flow does not reach. */
    LOAD_BEYOND_EMITTER,
    /** Branches among which no load can be shared. */
    IMPOSSIBLE_BRANCHES
}

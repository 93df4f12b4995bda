package headrace.trend;

import headrace.problem.Problem;

/** What can be wrong with what is asked of a trend log, and what its results can have to say about themselves. */
public enum TrendProblem implements Problem {
    /** A channel that the calculation needs is not in the log. */
    CHANNEL_MISSING,
    /** A log that was not cleaned is asked for more than its rows. */
    LOG_NOT_CLEANED,
    /** A log, or a part of it, has too few rows for what is asked. */
    TOO_SHORT_LOG,
    /** A rule of cleaning that cannot be. */
    IMPOSSIBLE_CLEANING,
    /** Something else that is asked of a log and cannot be. */
    IMPOSSIBLE_TREND_CHOICE,
    /** Note: cleaning left out a large share of the rows. */
    MUCH_LEFT_OUT,
    /** Note: rows lie outside the tested range of the pump and are not held against its map. */
    ROWS_OUTSIDE_MAP,
    /** Note: a baseline scatters or leans more than ASHRAE Guideline 14 has it. */
    BASELINE_TOO_LOOSE,
    /** Note: the year has temperatures that the log does not have. */
    BEYOND_LOGGED_WEATHER,
    /** Note: the log covers a few days only. */
    FEW_LOGGED_DAYS,
    /** Note: a saving that is smaller than its uncertainty. */
    SAVING_WITHIN_UNCERTAINTY,
    /** Note: a condition that the log has no reading to tell of. */
    CONDITION_NOT_SEEN
}

package headrace.data.log;

import headrace.problem.Problem;

/** What can be wrong with the file of a trend log, and what was taken in spite of a doubt. */
public enum LogProblem implements Problem {
    /** A column says no unit, and its values fit several or none. */
    DOUBTFUL_UNIT,
    /** A column says a unit, and its values are in another. */
    UNIT_NOT_CONFIRMED,
    /** The file has no column of times. */
    TIME_COLUMN_MISSING,
    /** A date that can be read in two ways. */
    DOUBTFUL_DATE,
    /** The clock was set back inside the log, and nothing says in which zone. */
    CLOCK_WITHOUT_ZONE,
    /** Too many rows do not fit the head of the file. */
    TOO_MANY_MISFITS,
    /** Too many cells of a column are no numbers. */
    COLUMN_OF_TEXT,
    /** Note: a unit was taken from the values of a column. */
    UNIT_FROM_VALUES,
    /** Note: a unit was stated against what the values look like. */
    UNIT_STATED_AGAINST_VALUES,
    /** Note: columns that nothing is made of. */
    COLUMNS_NOT_USED
}

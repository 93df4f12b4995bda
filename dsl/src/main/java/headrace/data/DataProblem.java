package headrace.data;

import headrace.problem.Problem;

/** What can be wrong with a file, and what a file can carry that its reader should know. */
public enum DataProblem implements Problem {
    /** There is no such file. */
    FILE_NOT_FOUND,
    /** It is a folder, or may not be read. */
    FILE_NOT_READABLE,
    /** The file is larger than any of its kind should be. */
    FILE_TOO_LARGE,
    /** The bytes are not text in UTF-8. */
    FILE_NOT_UTF8,
    /** The file has no line to read. */
    FILE_EMPTY,
    /** The file could not be written. */
    FILE_NOT_WRITTEN,
    /** A file would be written over that is not the program's own. */
    FILE_IN_THE_WAY,
    /** An ending that says no kind of file that can be saved. */
    UNKNOWN_FILE_KIND,
    /** A table or chart was asked for that a result does not show. */
    NOTHING_TO_SHOW,
    /** A line cannot be split into its cells. */
    MALFORMED_LINE,
    /** The cells are parted by something else than was said. */
    WRONG_SEPARATOR,
    /** A head line is not one of those that the file can have, or stands twice or too late. */
    WRONG_HEAD_LINE,
    /** A head line that the file must have is missing. */
    MISSING_HEAD_LINE,
    /** Two statements of the file cannot both be right. */
    CONTRADICTING_STATEMENTS,
    /** A column that the file must have is missing. */
    MISSING_COLUMN,
    /** A column is not one of those that the file can have, or stands twice. */
    WRONG_COLUMN,
    /** A column does not say its unit. */
    MISSING_UNIT,
    /** A column's unit does not exist or measures something else. */
    WRONG_UNIT,
    /** A cell that must hold a number holds something else, or nothing. */
    NOT_A_NUMBER,
    /** A number is not possible where it stands. */
    VALUE_NOT_POSSIBLE,
    /** The file has fewer rows than the job needs. */
    TOO_FEW_ROWS,
    /** A row of a table does not fit its columns. */
    ROW_DOES_NOT_FIT,
    /** Note: the file starts with a byte-order mark. */
    BYTE_ORDER_MARK,
    /** Note: the rows were not in the order of their flows. */
    UNORDERED_ROWS,
    /** Note: each point has a speed of its own. */
    SPEED_OF_EACH_POINT,
    /** Note: the file's efficiency is not the one that its flow, head and power give. */
    INCONSISTENT_EFFICIENCY,
    /** Note: the file does not say something, and a usual value was taken. */
    ASSUMED_HEAD_LINE
}

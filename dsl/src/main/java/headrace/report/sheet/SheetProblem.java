package headrace.report.sheet;

import headrace.problem.Problem;

/** What can be wrong with a sheet, and what it has to say about itself. */
public enum SheetProblem implements Problem {
    /** A sheet without a head or without parts. */
    INCOMPLETE_SHEET,
    /** A file that is no sheet of an earlier revision. */
    NO_EARLIER_SHEET,
    /** Something that the reader of the sheet must be told and was not. */
    NOT_STATED
}

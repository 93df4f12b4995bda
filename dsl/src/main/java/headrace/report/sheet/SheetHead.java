package headrace.report.sheet;

import headrace.problem.Refusal;

/**
 * What stands at the top of a sheet.
 *
 * @param title what it is
 * @param project for which building and system
 * @param revision its revision, such as {@code A}
 * @param date its date as written; blank to be filled in by hand
 * @param by who made it; blank to be filled in by hand
 */
public record SheetHead(String title, String project, String revision, String date, String by) {
    /** Refuses a sheet that does not say what it is for. */
    public SheetHead {
        if (title.isBlank() || project.isBlank() || revision.isBlank()) {
            throw new Refusal(
                    SheetProblem.INCOMPLETE_SHEET,
                    "Asked for a sheet '" + title + "' of the project '" + project + "' with the revision '" + revision
                            + "'",
                    "A sheet says what it is, for which project, and its revision",
                    "State project: and revision:");
        }
    }
}

package headrace.data;

import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;

/**
 * The text of a cell or of a head line's value, and where it stands.
 *
 * @param text without blanks at its ends
 * @param place where it starts
 */
record Entry(String text, Place place) {
    boolean empty() {
        return text.isEmpty();
    }

    /** Returns the number that stands here. */
    double number(NumberStyle style, String what) {
        return style.parse(text)
                .orElseThrow(() -> refused(
                        DataProblem.NOT_A_NUMBER,
                        (empty() ? "Asked to read an empty cell" : "Asked to read '" + text + "'") + " as " + what,
                        "A number is written like " + style.example() + ", in the digits 0 to 9 and without its unit",
                        "Write the number, or delete the row"));
    }

    Refusal refused(Problem problem, String asked, String possible, String next) {
        return new Refusal(problem, asked, possible, next).at(place);
    }
}

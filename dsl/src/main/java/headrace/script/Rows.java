package headrace.script;

import headrace.problem.Refusal;
import java.util.List;

/** A row of values that a script wrote as a list, such as {@code [90.percent, 100.percent, 477.W]}. */
final class Rows {
    private Rows() {}

    /**
     * Returns the values of a row.
     *
     * @param given what the script gave
     * @param size how many values it must have
     * @param place what it was given for, as it stands in a sentence
     * @param parts what its values are, in their order
     */
    static Object[] of(Object given, int size, String place, String parts) {
        if (given instanceof List<?> row && row.size() == size) {
            return row.toArray();
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                Described.value(given) + " was given for " + place,
                "It must be a list of " + parts,
                "Write these " + size + " values in brackets, in that order");
    }
}

package headrace.units;

import headrace.problem.Problem;

/** What can be wrong with a quantity. */
public enum UnitProblem implements Problem {
    /** A quantity is infinite or not a number. */
    IMPOSSIBLE_QUANTITY,
    /** A unit that does not exist, or does not belong to the quantity. */
    UNKNOWN_UNIT,
    /** Two quantities were added, compared or multiplied whose result means nothing. */
    MEANINGLESS_ARITHMETIC
}

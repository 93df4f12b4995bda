package headrace.units;

import headrace.problem.Problem;

/** What can be wrong with a quantity. */
public enum UnitProblem implements Problem {
    /** A quantity is infinite or not a number. */
    IMPOSSIBLE_QUANTITY,
    /** A unit that does not exist, or does not belong to the quantity. */
    UNKNOWN_UNIT,
    /** A text that is no number followed by a unit. */
    UNREADABLE_QUANTITY,
    /** A currency that is no code of ISO 4217. */
    UNKNOWN_CURRENCY,
    /** Two quantities were added, compared or multiplied whose result means nothing. */
    MEANINGLESS_ARITHMETIC,
    /** A machine was given a number of poles that is not even, or none. */
    UNEVEN_POLES
}

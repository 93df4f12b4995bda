package headrace.liquid;

import headrace.problem.Problem;

/** What can be wrong with a liquid. */
public enum LiquidProblem implements Problem {
    /** A temperature at which the liquid's properties are not known, or at which it is no liquid. */
    TEMPERATURE_OUTSIDE_LIQUID,
    /** A property that no liquid has, such as a density of 0. */
    IMPOSSIBLE_LIQUID,
    /** A share of glycol for which the mixture's properties are not known. */
    GLYCOL_OUTSIDE_RANGE,
    /** A temperature close to the freezing point. */
    NEAR_FREEZING
}

package headrace.curve;

import headrace.numeric.Polynomial;
import headrace.problem.Refusal;
import headrace.units.Flow;

/**
 * Head and shaft power given as formulas instead of test points.
 *
 * @param headMetres the head in m, of the flow in m³/s
 * @param shaftWatts the shaft power in W, of the flow in m³/s
 * @param lowest the least flow for which they hold
 * @param highest the greatest flow for which they hold
 */
public record CurveFormula(Polynomial headMetres, Polynomial shaftWatts, Flow lowest, Flow highest) {
    /** Refuses with {@code FLOW_OUT_OF_RANGE} a range that is empty or begins below 0. */
    public CurveFormula {
        if (lowest.si() < 0 || lowest.compareTo(highest) >= 0) {
            throw new Refusal(
                    CurveProblem.FLOW_OUT_OF_RANGE,
                    "Given a pump curve from " + lowest + " to " + highest,
                    "A curve begins at a flow of 0 or more and ends at a greater one",
                    "Give the range for which the formulas hold");
        }
    }
}

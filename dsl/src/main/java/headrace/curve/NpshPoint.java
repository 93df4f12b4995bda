package headrace.curve;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Speed;

/**
 * One reading of the NPSH that a pump requires, at 3 % drop of head.
 *
 * @param flow the flow, at least 0
 * @param required the NPSH required, above 0
 * @param speed the speed at which it was read, above 0
 */
public record NpshPoint(Flow flow, Head required, Speed speed) {
    /** Refuses with {@code IMPOSSIBLE_POINT} what no pump can show. */
    public NpshPoint {
        if (flow.si() < 0 || required.si() <= 0 || speed.si() <= 0) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_POINT,
                    "Given an NPSH of " + required + " at " + flow + " and " + speed,
                    "Flow is 0 or more, NPSH and speed are above 0",
                    "Check the reading and its sign, or leave the point out");
        }
    }
}

package headrace.curve;

import headrace.problem.Notes;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;

/**
 * A point of a pump curve.
 *
 * @param flow the flow
 * @param head the total head
 * @param shaftPower the power into the shaft
 * @param efficiency the pump's efficiency: hydraulic power over shaft power
 * @param speed the speed
 * @param notes which limits were touched; {@code EXTENDED_BEYOND_TEST} if the point lies beyond the tested range
 */
public record CurvePoint(Flow flow, Head head, Power shaftPower, Ratio efficiency, Speed speed, Notes notes) {
    /** Returns whether the point lies inside the range that the test covers. */
    public boolean tested() {
        return !notes.has(CurveProblem.EXTENDED_BEYOND_TEST);
    }

    /** Returns flow and head of this point as a duty. */
    public Duty duty() {
        return new Duty(flow, head);
    }

    @Override
    public String toString() {
        return flow + " at " + head + ", " + speed + ": " + shaftPower + " at the shaft, " + efficiency;
    }
}

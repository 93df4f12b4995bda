package headrace.estimate;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Speed;

/**
 * Flow, head, wire power and speed read together at a pump set.
 *
 * @param flow the flow, 0 or more
 * @param head the head, 0 or more
 * @param power the wire power, above 0
 * @param speed the speed, above 0
 */
public record MeasuredPoint(Flow flow, Head head, Power power, Speed speed) {
    /** Refuses with {@code IMPOSSIBLE_READING} what no running pump can give. */
    public MeasuredPoint {
        if (!(flow.si() >= 0 && head.si() >= 0 && power.watts() > 0 && speed.si() > 0)) {
            throw new Refusal(
                    EstimateProblem.IMPOSSIBLE_READING,
                    "Given " + flow + ", " + head + ", " + power + " and " + speed + " as read at a pump set",
                    "Flow and head are 0 or more, power and speed above 0",
                    "Check the signs, or leave the reading out");
        }
    }
}

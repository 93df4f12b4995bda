package headrace.curve;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;

/**
 * What a pump has to deliver.
 *
 * @param flow the flow, at least 0
 * @param head the head at that flow, above 0
 */
public record Duty(Flow flow, Head head) {
    /** Refuses with {@code IMPOSSIBLE_DUTY} a negative flow, and a head that is not above 0. */
    public Duty {
        if (flow.si() < 0 || head.si() <= 0) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_DUTY,
                    "Asked for a duty of " + flow + " at " + head,
                    "A duty has a flow of 0 or more and a head above 0",
                    "Check the signs and the units");
        }
    }

    /** Returns the duty as it stands on a schedule, such as {@code 52 m³/h at 16 m}. */
    @Override
    public String toString() {
        return flow + " at " + head;
    }
}

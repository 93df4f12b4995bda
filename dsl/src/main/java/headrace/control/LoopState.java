package headrace.control;

import headrace.problem.Refusal;
import headrace.units.Flow;

/**
 * The state of the loop that a control law sees.
 *
 * @param flow the flow that the loop takes, 0 or more
 */
public record LoopState(Flow flow) {
    /** Refuses a flow below 0. */
    public LoopState {
        if (flow.si() < 0) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LOOP_STATE,
                    "Asked for a control law at " + flow,
                    "The flow must be 0 or more",
                    "Check the sign");
        }
    }
}

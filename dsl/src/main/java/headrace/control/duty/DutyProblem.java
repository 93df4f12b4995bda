package headrace.control.duty;

import headrace.problem.Problem;

/** What can be wrong with a duty and standby plan, and what its record can have to say about itself. */
public enum DutyProblem implements Problem {
    /** A plan of alternation that cannot be. */
    IMPOSSIBLE_DUTY_PLAN,
    /** Spans of time that are out of order, overlap, or lie outside the record. */
    IMPOSSIBLE_SPANS,
    /** Time in which no pump could run. */
    NO_PUMP_LEFT,
    /** Time without a pump between a fault and the start of the standby pump. */
    GAP_AFTER_FAULT,
    /** Alternations that were left out because no standby pump was fit to run. */
    ALTERNATION_LEFT_OUT
}

package headrace.operation.limit;

import headrace.problem.Problem;

/** What can be wrong with a limit, and what a limit can have to say. */
public enum LimitProblem implements Problem {
    /** An operating region that is empty or turned round. */
    IMPOSSIBLE_REGION,
    /** Flows that a pump set can reach that are none. */
    IMPOSSIBLE_REACH,
    /** A least flow from a share or a temperature rise that cannot be. */
    IMPOSSIBLE_MINIMUM_FLOW,
    /** Contents, metal or temperatures from which no time follows. */
    IMPOSSIBLE_DEAD_HEAD,
    /** A temperature rise that the pump stays above at every flow. */
    NO_THERMAL_FLOW,
    /** A temperature rise asked for at no flow. */
    NO_HEAT_RISE,
    /** What the pump set can reach ends where its test ends. */
    REACH_ENDS_WITH_TEST,
    /** An operating region that no maker stated. */
    REGION_ASSUMED,
    /** A flow outside the preferred region. */
    OUTSIDE_PREFERRED_REGION,
    /** A flow outside the allowable region. */
    OUTSIDE_ALLOWABLE_REGION,
    /** A least stable flow or a temperature rise that no maker stated. */
    MINIMUM_FLOW_ASSUMED,
    /** A least flow that lies below what the test covers. */
    MINIMUM_FLOW_BELOW_TEST,
    /** A time against a closed valve, without heat given off. */
    DEAD_HEAD_TIME,
    /** A shaft power above what the motor gives, somewhere within reach. */
    OVERLOAD_WITHIN_REACH
}

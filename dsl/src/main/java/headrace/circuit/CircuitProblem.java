package headrace.circuit;

import headrace.problem.Problem;

/** What can be wrong with a circuit. */
public enum CircuitProblem implements Problem {
    /** A system curve that cannot be. */
    IMPOSSIBLE_SYSTEM_CURVE,
    /** A flow in a circuit that is below 0. */
    NEGATIVE_SYSTEM_FLOW,
    /** A branch that cannot be. */
    IMPOSSIBLE_CIRCUIT_BRANCH,
    /** Two branches of one name. */
    DOUBLE_BRANCH,
    /** Branches that do not hang together. */
    UNCONNECTED_CIRCUIT,
    /** A name that no branch has. */
    UNKNOWN_BRANCH,
    /** A name that no junction has. */
    UNKNOWN_JUNCTION,
    /** A terminal that is asked for a flow below 0. */
    NEGATIVE_DEMAND,
    /** The equations of a circuit were not met. */
    CIRCUIT_NOT_SOLVED,
    /** A law and a circuit that do not meet, or that run alike. */
    LAW_MISSES_CIRCUIT,
    /** Pumps and a circuit that agree at several points. */
    SEVERAL_OPERATING_POINTS,
    /** An operating point that was found by looking through heads. */
    LOOKED_FOR_OPERATING_POINT,
    /** A total flow that the terminals do not take. */
    FLOW_OUTSIDE_DEMANDS,
    /** A head band whose upper edge was searched. */
    BAND_SEARCHED,
    /** A terminal that gets less than is asked of it. */
    STARVED_BRANCH,
    /** A terminal that gets nothing. */
    BRANCH_NOT_FED,
    /** A pump that others hold shut or drive backwards. */
    PUMPS_FIGHTING,
    /** A branch whose valve is hardly open or has little authority in a state. */
    HUNTING_BRANCH,
    /** A valve that more head presses on than its actuator holds shut. */
    FORCED_OPEN_VALVE,
    /** A head band of a circuit with a minimum-flow valve. */
    BYPASS_BELOW_LEAST_FLOW,
    /** A head at a pump that moves nothing, or less than none. */
    NO_HEAD_AT_PUMP,
    /** A circuit whose branches all hold their flows themselves. */
    NOTHING_TO_BALANCE
}

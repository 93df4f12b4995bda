package headrace.circuit.part;

import headrace.problem.Problem;

/** What can be wrong with, or said of, a part of a circuit. */
public enum PartProblem implements Problem {
    /** A part with a length, a size or a loss that cannot be. */
    IMPOSSIBLE_PART,
    /** A nominal size that a series of pipes does not have. */
    UNKNOWN_PIPE_SIZE,
    /** Fittings of one pipe stated by two methods. */
    MIXED_FITTING_METHODS,
    /** Kv and Cv in one table. */
    MIXED_FLOW_COEFFICIENTS,
    /** A valve that would have to pass more than it does when it is fully open. */
    DEMAND_ABOVE_OPEN_VALVE,
    /** A balancing valve without a setting for what it should take. */
    NO_SUCH_SETTING,
    /** An authority that cannot be. */
    IMPOSSIBLE_AUTHORITY,
    /** A flow between laminar and turbulent. */
    FLOW_IN_TRANSITION,
    /** A velocity above what is usual for a pipe of that size. */
    HIGH_VELOCITY,
    /** A velocity that carries no air along. */
    LOW_VELOCITY,
    /** A formula of a fitting below its Reynolds numbers. */
    FITTING_OUTSIDE_FORMULA,
    /** A control valve whose authority is so low that it hardly controls. */
    LOW_AUTHORITY,
    /** A pressure-independent valve with less than it needs. */
    BELOW_VALVE_FLOOR,
    /** A pressure-independent valve with more than it bears. */
    ABOVE_VALVE_CEILING,
    /** A coil with so little water that its flow turns laminar. */
    LAMINAR_COIL,
    /** A decoupler that runs backwards. */
    DECOUPLER_REVERSED,
    /** A pump in a branch that moves more than its curve reaches. */
    BOOSTER_BEYOND_CURVE
}

package headrace.pump;

import headrace.problem.Problem;

/** What can be wrong with, or said of, a pump set. */
public enum PumpProblem implements Problem {
    /** The pump's speed is not one at which a motor of that many poles runs. */
    MOTOR_SPEED_MISMATCH,
    /** A least speed that is not above 0, or above the greatest. */
    IMPOSSIBLE_SPEED_RANGE,
    /** A change of speed was asked of a pump set without a drive. */
    DRIVE_MISSING,
    /** The least speed was not stated. */
    MINIMUM_SPEED_ASSUMED,
    /** Somewhere on its tested curve the pump takes more than the motor is rated for. */
    OVERLOAD_WITHIN_CURVE,
    /** A branch of a pump that would add head, or has no name. */
    IMPOSSIBLE_BRANCH,
    /** Several pumps asked for, and none given. */
    NO_PUMPS,
    /** A curve without its head at no flow, by which a check valve closes. */
    SHUT_OFF_UNKNOWN,
    /** A head that rises with flow where only falling ones are taken. */
    DROOPING_BRANCH,
    /** A system that takes so little head that a pump leaves its curve. */
    BEYOND_PUMP_CURVES,
    /** Pumps and a system that meet nowhere. */
    NO_SHARED_POINT,
    /** A pump that runs against its closed check valve. */
    DEAD_HEADED_PUMP,
    /** Pumps and a system that can meet at several points. */
    SEVERAL_SOLUTIONS,
    /** Pumps in series whose curves share no flow. */
    NO_SHARED_FLOW,
    /** A size for which no typical efficiency is known. */
    NO_TYPICAL_EFFICIENCY
}

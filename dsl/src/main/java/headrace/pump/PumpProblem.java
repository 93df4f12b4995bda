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
    OVERLOAD_WITHIN_CURVE
}

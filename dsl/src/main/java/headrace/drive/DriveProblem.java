package headrace.drive;

import headrace.problem.Problem;

/** What can be wrong with, or said of, a motor and its drive. */
public enum DriveProblem implements Problem {
    /** A rating, a class or a number of poles that the tables do not hold. */
    RATING_OUTSIDE_TABLE,
    /** An efficiency that is not above 0 and below 100 %. */
    IMPOSSIBLE_EFFICIENCY,
    /** A loss model whose numbers cannot be. */
    IMPOSSIBLE_LOSSES,
    /** A shaft power below 0, or a speed that is not above 0. */
    IMPOSSIBLE_LOAD,
    /** The load asks for more power or torque than the motor is rated for. */
    MOTOR_OVERLOAD,
    /** The load asks for more torque current than the drive is rated for. */
    DRIVE_OVERLOAD,
    /** The load lies outside the range for which the loss model was made. */
    PART_LOAD_OUTSIDE_MODEL,
    /** The motor is of a size for which the loss model was not made. */
    MOTOR_SIZE_OUTSIDE_MODEL,
    /** A loss model of that name does not exist. */
    UNKNOWN_LOSS_MODEL
}

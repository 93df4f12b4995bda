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
    UNKNOWN_LOSS_MODEL,
    /** A declared or measured loss that cannot be. */
    IMPOSSIBLE_LOSS_POINT,
    /** Fewer points than the loss formula has terms. */
    TOO_FEW_LOSS_POINTS,
    /** Points that do not tell the terms of the loss formula from each other. */
    LOSS_POINTS_ALIKE,
    /** Points that differ much from the loss formula; refused where they differ by far. */
    LOSS_POINTS_CONTRADICT,
    /** Fitted losses of a drive that are not above 0 everywhere. */
    DRIVE_LOSS_NOT_POSITIVE,
    /** Note: as many points as terms, so that nothing tells how well they fit. */
    LOSSES_WITHOUT_RESIDUAL,
    /** Note: the fitted losses at full load are not those that the efficiency of the motor says. */
    FITTED_LOSS_DIFFERS,
    /** A place too high or too hot for the common figures of derating. */
    SITE_OUTSIDE_DERATING,
    /** Note: the motor gives less than its rated power where it stands. */
    MOTOR_DERATED,
    /** A load is asked of a motor by its slip, and its rated speed is not stated or leaves no slip. */
    SLIP_UNKNOWN,
    /** A load that would pull a motor on the mains far below its synchronous speed. */
    SLIP_BEYOND_MOTOR,
    /** Note: the losses declared at several points are not used by the loss model. */
    DECLARED_LOSSES_UNUSED
}

package headrace.drive;

import headrace.problem.Notes;

/**
 * Losses of motor and drive apart: each with its own parts, which follow torque and speed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Torque, speed, frequency and torque current as shares of their rated values; slip is left out, so that
 *       frequency and speed are the same share.
 *   <dt>Limits
 *   <dd>Up to rated speed, on the mains to synchronous speed, and up to 110 % of rated torque; a load beyond carries
 *       {@code PART_LOAD_OUTSIDE_MODEL}. A drive whose losses are declared at several points loses what these say.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>Full-load loss of the motor and reference loss of the drive as these say; the shares of the parts are assumed
 *       by this project and can be replaced.
 * </dl>
 *
 * @param motor the shares of the motor's losses
 * @param drive the shape of the drive's losses
 */
public record SeparateLosses(MotorShares motor, DriveShape drive) implements LossModel {
    /** The model with the assumed shares. */
    public static final SeparateLosses ASSUMED = new SeparateLosses(MotorShares.ASSUMED, DriveShape.ASSUMED);

    private static final double MOST_TORQUE = 1.1;

    @Override
    public String name() {
        return "separate";
    }

    @Override
    public String statement() {
        return "losses of motor and drive apart: " + motor.statement() + "; " + drive.statement()
                + " (t torque, s and f speed, i torque current, as shares of rated; the shares are assumed)";
    }

    @Override
    public boolean followsLoad() {
        return true;
    }

    @Override
    public boolean usesDeclaredLosses() {
        return true;
    }

    @Override
    public LossCurve withDrive(Motor driven, Drive by) {
        return new SeparateCurve(motor.of(driven), DriveTerms.of(by, drive), bounds(1), Notes.NONE);
    }

    @Override
    public LossCurve onMains(Motor driven) {
        return new SeparateCurve(motor.of(driven), null, bounds(SeparateCurve.MOST_ON_MAINS), Notes.NONE);
    }

    private SeparateCurve.Bounds bounds(double mostSpeed) {
        return new SeparateCurve.Bounds(name(), new LossPoint.Range(0, MOST_TORQUE), new LossPoint.Range(0, mostSpeed));
    }
}

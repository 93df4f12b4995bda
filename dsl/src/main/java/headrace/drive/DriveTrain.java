package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * A motor, with a drive or on the mains, and the model of what they lose: shaft power to wire power.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Speeds as shares of the motor's rated speed.
 *   <dt>Limits
 *   <dd>Those of the loss model. A load beyond the motor's rated power, or beyond its rated torque at reduced speed, is
 *       computed and carries {@code MOTOR_OVERLOAD}.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_LOAD}.
 *   <dt>Source
 *   <dd>Named by motor, drive and loss model.
 * </dl>
 */
public final class DriveTrain implements Traced {
    /** Loads and speeds that differ by this share count as the same. */
    static final double ROUNDING = 1e-9;

    private final Motor motor;
    private final Drive drive;
    private final LossModel model;
    private final LossCurve losses;

    private DriveTrain(Motor motor, Drive drive, LossModel model) {
        this.motor = motor;
        this.drive = drive;
        this.model = model;
        this.losses = drive == null ? model.onMains(motor) : model.withDrive(motor, drive);
    }

    /** Returns a motor with its drive. */
    public static DriveTrain of(Motor motor, Drive drive, LossModel model) {
        return new DriveTrain(motor, drive, model);
    }

    /** Returns a motor on the mains. */
    public static DriveTrain onMains(Motor motor, LossModel model) {
        return new DriveTrain(motor, null, model);
    }

    /** Returns the motor. */
    public Motor motor() {
        return motor;
    }

    /** Returns the drive, none for a motor on the mains. */
    public Optional<Drive> drive() {
        return Optional.ofNullable(drive);
    }

    /** Returns the model of the losses. */
    public LossModel model() {
        return model;
    }

    /** Returns the same motor and drive with another loss model. */
    public DriveTrain with(LossModel other) {
        return new DriveTrain(motor, drive, other);
    }

    /** Returns the same motor without its drive. */
    public DriveTrain bypassed() {
        return new DriveTrain(motor, null, model);
    }

    /**
     * Returns the wire power in W.
     *
     * @param shaftWatts the power at the shaft in W, not below 0
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     */
    public double inputWatts(double shaftWatts, double speedRatio) {
        return shaftWatts + losses.watts(shaftWatts, speedRatio);
    }

    /**
     * Returns the losses one by one.
     *
     * @param shaft the power at the shaft
     * @param speedRatio the speed as a share of the motor's rated speed
     * @throws Refusal with {@code IMPOSSIBLE_LOAD} if the power is below 0 or the speed not above 0
     */
    public Losses lossesAt(Power shaft, Ratio speedRatio) {
        double watts = shaft.watts();
        double speed = speedRatio.value();
        if (watts < 0 || speed <= 0) {
            throw new Refusal(
                    DriveProblem.IMPOSSIBLE_LOAD,
                    "Asked for the losses at " + shaft + " shaft power and " + speedRatio + " speed",
                    "The power must not be below 0 and the speed must be above 0",
                    "Leave a stopped pump out instead");
        }
        return new Losses(shaft, losses.parts(watts, speed), notesAt(watts, speed), basis());
    }

    @Override
    public Notes notes() {
        return motor.notes();
    }

    @Override
    public Basis basis() {
        Basis both = drive == null ? motor.basis() : motor.basis().and(drive.basis());
        return both.with("loss model '" + model.name() + "': " + model.statement());
    }

    @Override
    public String toString() {
        return motor + (drive == null ? " on the mains" : ", " + drive) + ", losses " + model.name();
    }

    /** Below rated speed the motor gives its rated torque, so its power shrinks with the speed. */
    private Notes notesAt(double shaftWatts, double speed) {
        double allowed = motor.rated().watts() * Math.min(1, speed);
        Notes notes = losses.notes(shaftWatts, speed);
        if (shaftWatts <= allowed * (1 + ROUNDING)) {
            return notes;
        }
        return notes.with(
                DriveProblem.MOTOR_OVERLOAD,
                "The load takes " + Power.watts(shaftWatts) + " at " + Ratio.of(speed) + " speed, the motor gives "
                        + Power.watts(allowed) + " there");
    }
}

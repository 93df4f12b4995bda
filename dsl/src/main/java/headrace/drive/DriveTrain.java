package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
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

    private static final double MOST_CABLE_LOSS = 0.2;

    private final Motor motor;
    private final Drive drive;
    private final LossModel model;
    private final LossCurve losses;
    private final Ratio cableLoss;

    private DriveTrain(Motor motor, Drive drive, LossModel model, Ratio cableLoss) {
        this.motor = motor;
        this.drive = drive;
        this.model = model;
        this.cableLoss = cableLoss;
        this.losses = drive == null ? model.onMains(motor) : model.withDrive(motor, drive);
    }

    /** Returns a motor with its drive. */
    public static DriveTrain of(Motor motor, Drive drive, LossModel model) {
        return new DriveTrain(motor, drive, model, Ratio.ZERO);
    }

    /** Returns a motor on the mains. */
    public static DriveTrain onMains(Motor motor, LossModel model) {
        return new DriveTrain(motor, null, model, Ratio.ZERO);
    }

    /**
     * Returns this motor and drive behind cables and filters that lose a share of what passes to drive or motor.
     *
     * @param share the loss over what drive or motor takes, 0 to 20 %
     */
    public DriveTrain withCableLoss(Ratio share) {
        if (!(share.value() >= 0 && share.value() <= MOST_CABLE_LOSS)) {
            throw new Refusal(
                    DriveProblem.IMPOSSIBLE_LOSSES,
                    "Asked for cables and filters that lose " + share,
                    "The share lies from 0 to 20 %",
                    "Common are 1 to 3 %");
        }
        return new DriveTrain(motor, drive, model, share);
    }

    /** Returns what cables and filters lose, as a share of what drive or motor takes. */
    public Ratio cableLoss() {
        return cableLoss;
    }

    /** Returns what is taken from the wire while the pump stands still: the standby power of the drive. */
    public Power standby() {
        return drive == null ? Power.ZERO : drive.extras().standby();
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
        return new DriveTrain(motor, drive, other, cableLoss);
    }

    /** Returns the same motor without its drive. */
    public DriveTrain bypassed() {
        return new DriveTrain(motor, null, model, cableLoss);
    }

    /**
     * Returns the wire power in W.
     *
     * @param shaftWatts the power at the shaft in W, not below 0
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     */
    public double inputWatts(double shaftWatts, double speedRatio) {
        double taken = shaftWatts + losses.watts(shaftWatts, speedRatio);
        return taken + cableLoss.value() * taken;
    }

    /**
     * Fills the losses of motor and drive, without those of cables, at the first loads and one speed. Checks nothing.
     *
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     * @param arrays the loads, and room for the losses
     * @param count how many loads
     */
    public void fillLosses(double speedRatio, LossArrays arrays, int count) {
        losses.fill(speedRatio, arrays, count);
    }

    /**
     * Returns the power at the shaft in W for a wire power in W: {@link #inputWatts} read backwards. Minus infinity
     * where the wire power is less than is lost without load.
     *
     * @param inputWatts the wire power in W
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     */
    public double shaftWatts(double inputWatts, double speedRatio) {
        return losses.shaftWatts(inputWatts / (1 + cableLoss.value()), speedRatio);
    }

    /**
     * Fills the powers at the shaft for many wire powers, as {@link #shaftWatts} gives each, or within 1e-13 of it.
     *
     * @param inputs the wire powers in W
     * @param speedRatios the speed of each as a share of the motor's rated speed, above 0
     * @param shafts to be filled; may be the array of the wire powers
     * @param count how many
     */
    public void fillShafts(double[] inputs, double[] speedRatios, double[] shafts, int count) {
        double cable = 1 / (1 + cableLoss.value());
        for (int i = 0; i < count; i++) {
            shafts[i] = inputs[i] * cable;
        }
        losses.fillShafts(shafts, speedRatios, shafts, count);
    }

    /**
     * Fills by how much the losses of motor and drive, without those of cables, grow with load and speed, at the first
     * loads and one speed. Checks nothing.
     *
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     * @param slopes the loads, and room for the slopes
     * @param count how many loads
     */
    public void fillSlopes(double speedRatio, LossSlopes slopes, int count) {
        losses.fillSlopes(speedRatio, slopes, count);
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
        return new Losses(shaft, parts(watts, speed), notesAt(watts, speed), basis());
    }

    private List<Losses.Part> parts(double watts, double speed) {
        List<Losses.Part> parts = losses.parts(watts, speed);
        if (cableLoss.value() == 0) {
            return parts;
        }
        Power lost = Power.watts(cableLoss.value() * (watts + losses.watts(watts, speed)));
        List<Losses.Part> all = new ArrayList<>(parts);
        all.add(new Losses.Part(Losses.Place.CABLE_AND_FILTER, "cable and filter", lost));
        return all;
    }

    @Override
    public Notes notes() {
        Notes notes = motor.notes().and(model.notes());
        if (drive == null) {
            return notes;
        }
        boolean unused = drive.extras().declared().isPresent() && !model.usesDeclaredLosses();
        return unused
                ? notes.with(
                        DriveProblem.DECLARED_LOSSES_UNUSED,
                        "The " + drive + " has losses declared at several points; the loss model '" + model.name()
                                + "' does not use them")
                : notes.and(drive.notes());
    }

    @Override
    public Basis basis() {
        Basis both = drive == null ? motor.basis() : motor.basis().and(drive.basis());
        if (cableLoss.value() > 0) {
            both = both.with("cables and filters lose " + cableLoss + " of what passes, as stated by the user");
        }
        return both.with("loss model '" + model.name() + "': " + model.statement());
    }

    @Override
    public String toString() {
        return motor + (drive == null ? " on the mains" : ", " + drive) + ", losses " + model.name();
    }

    /** Below rated speed the motor gives its rated torque, so its power shrinks with the speed. */
    private Notes notesAt(double shaftWatts, double speed) {
        double allowed = motor.usable().watts() * Math.min(1, speed);
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

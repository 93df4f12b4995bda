package headrace.pump;

import headrace.curve.PumpCurve;
import headrace.drive.DriveProblem;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.liquid.Liquid;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Speed;
import java.util.function.DoubleUnaryOperator;

/**
 * A pump with its motor, its drive and the range of speeds that these allow.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Speeds of the shaft. Pump and motor turn at the same speed.
 *   <dt>Limits
 *   <dd>The rated speed is the one stated for the motor; where none is, it is the speed of the pump curve, which must
 *       then be one at which a motor of that many poles can run at full load: 85 to 100 % of its synchronous speed at
 *       50 or 60 Hz. Where the least speed is not stated, 25 % of rated speed is assumed and noted. The greatest speed
 *       is the rated speed unless stated. That the speed of a motor on the mains rises a little at part load is left
 *       out unless asked for by {@link #speedOnMains}.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code MOTOR_SPEED_MISMATCH}, {@code IMPOSSIBLE_SPEED_RANGE} or {@code DRIVE_MISSING}.
 *   <dt>Source
 *   <dd>Named by curve, motor and drive; the assumed least speed and the bounds of slip are our own.
 * </dl>
 */
public final class PumpSet implements Traced {
    private static final double ROUNDING = 1e-9;
    private static final double ASSUMED_MINIMUM = 0.25;
    private static final double MOST_SLIP = 0.15;
    private static final int STEPS = 200;

    private final PumpCurve curve;
    private final DriveTrain driveTrain;
    private final Speed ratedSpeed;
    private final Range range;
    private final Notes notes;

    private record Range(Speed minimum, Speed maximum, boolean stated) {}

    private PumpSet(PumpCurve curve, DriveTrain driveTrain, Speed ratedSpeed, Range range) {
        this.curve = curve;
        this.driveTrain = driveTrain;
        this.ratedSpeed = ratedSpeed;
        this.range = range;
        this.notes = ownNotes();
    }

    /** Returns the pump with this motor and drive; the least speed is assumed. */
    public static PumpSet of(PumpCurve curve, DriveTrain driveTrain) {
        Motor motor = driveTrain.motor();
        Speed rated = motor.statedSpeed().orElse(curve.speed());
        requirePossible(rated, motor, curve);
        Speed least = driveTrain.drive().isPresent() ? rated.times(ASSUMED_MINIMUM) : rated;
        return new PumpSet(curve, driveTrain, rated, new Range(least, rated, false));
    }

    /**
     * Returns this pump set with stated limits of speed.
     *
     * @param minimum the least speed that the drive keeps, above 0
     * @param maximum the greatest speed, not below the least
     */
    public PumpSet withSpeeds(Speed minimum, Speed maximum) {
        requireRange(minimum, maximum);
        return new PumpSet(curve, driveTrain, ratedSpeed, new Range(minimum, maximum, true));
    }

    /** Returns this pump set with a stated least speed. */
    public PumpSet withMinimumSpeed(Speed minimum) {
        return withSpeeds(minimum, range.maximum);
    }

    /** Returns this pump set with a stated greatest speed; the least stays as it is, stated or assumed. */
    public PumpSet withMaximumSpeed(Speed maximum) {
        requireRange(range.minimum, maximum);
        return new PumpSet(curve, driveTrain, ratedSpeed, new Range(range.minimum, maximum, range.stated));
    }

    /** Returns this pump set with other losses. */
    public PumpSet with(LossModel model) {
        return new PumpSet(curve, driveTrain.with(model), ratedSpeed, range);
    }

    /** Returns this pump set with another curve, moved or extended. */
    public PumpSet with(PumpCurve other) {
        return new PumpSet(other, driveTrain, ratedSpeed, range);
    }

    /** Returns what is pumped. */
    public Liquid liquid() {
        return curve.liquid();
    }

    /**
     * Returns this pump set in a liquid, such as that of the circuit in which it stands; itself if that is pumped
     * already.
     *
     * @throws Refusal as {@link PumpCurve#inLiquid}
     */
    public PumpSet inLiquid(Liquid liquid) {
        return liquid.equals(curve.liquid()) ? this : with(curve.inLiquid(liquid));
    }

    /** Returns this pump set with the motor on the mains: at rated speed, without the losses of a drive. */
    public PumpSet onMains() {
        return new PumpSet(curve, driveTrain.bypassed(), ratedSpeed, new Range(ratedSpeed, ratedSpeed, false));
    }

    /**
     * Returns the speed on the mains at a flow: synchronous speed less the slip, which goes with the torque, {@code n =
     * n_sync·(1 − slip·T/T_N)}, as the pump's own power at that speed decides.
     *
     * @throws Refusal with {@code SLIP_BEYOND_MOTOR} if the load would pull it more than 15 % below synchronous speed
     */
    public Speed speedOnMains(Flow flow) {
        double synchronous = driveTrain
                .motor()
                .synchronousSpeed(ratedSpeed)
                .orElse(ratedSpeed)
                .si();
        double slip = 1 - ratedSpeed.si() / synchronous;
        double ratedTorque = driveTrain.motor().rated().watts() / ratedSpeed.si();
        DoubleUnaryOperator excess = speed -> {
            double torque = curve.shaftWatts(flow.si(), speed / curve.speed().si()) / speed;
            return speed - synchronous * (1 - slip * torque / ratedTorque);
        };
        double least = synchronous * (1 - MOST_SLIP);
        if (!(excess.applyAsDouble(least) <= 0)) {
            throw new Refusal(
                    DriveProblem.SLIP_BEYOND_MOTOR,
                    "Asked for the speed of " + curve.name() + " on the mains at " + flow,
                    "The load would pull the " + driveTrain.motor() + " more than 15 % below its synchronous "
                            + Speed.radiansPerSecond(synchronous),
                    "Choose a larger motor or less flow");
        }
        return Speed.radiansPerSecond(Roots.between(excess, least, synchronous));
    }

    /** Returns the pump's curves. */
    public PumpCurve curve() {
        return curve;
    }

    /** Returns motor and drive. */
    public DriveTrain driveTrain() {
        return driveTrain;
    }

    /** Returns the motor's speed at full load. */
    public Speed ratedSpeed() {
        return ratedSpeed;
    }

    /** Returns the least speed. */
    public Speed minimumSpeed() {
        return range.minimum;
    }

    /** Returns the greatest speed. */
    public Speed maximumSpeed() {
        return range.maximum;
    }

    /** Returns whether the least speed was stated by the user. */
    public boolean minimumSpeedStated() {
        return range.stated;
    }

    /** Returns whether a drive can change the speed. */
    public boolean hasDrive() {
        return driveTrain.drive().isPresent();
    }

    /**
     * Passes if a drive can change the speed.
     *
     * @param asked what was asked for, as it follows {@code Asked for}
     * @throws Refusal with {@code DRIVE_MISSING} if there is none
     */
    public void requireDrive(String asked) {
        if (!hasDrive()) {
            throw new Refusal(
                    PumpProblem.DRIVE_MISSING,
                    "Asked for " + asked,
                    "This pump set has no drive and turns at " + ratedSpeed + " only",
                    "Give the pump set a drive, or throttle it at constant speed");
        }
    }

    /**
     * Returns the wire power in W at a flow in m³/s and a speed as a share of the curve's own. Checks no range.
     *
     * @param q the flow in m³/s
     * @param s the speed as a share of the speed of the curve, above 0
     */
    public double wireWatts(double q, double s) {
        double ofRated = s * curve.speed().si() / ratedSpeed.si();
        return driveTrain.inputWatts(curve.shaftWatts(q, s), ofRated);
    }

    /** Fills a map with what this pump set does over its flows and speeds. */
    public void fill(WireMap map) {
        map.fill(curve, driveTrain, curve.speed().si() / ratedSpeed.si());
    }

    @Override
    public Notes notes() {
        return notes;
    }

    @Override
    public Basis basis() {
        String limits = hasDrive()
                ? "speed from " + range.minimum + (range.stated ? " (stated) to " : " (assumed) to ") + range.maximum
                : "speed on the mains " + ratedSpeed + " at every load";
        String rated = driveTrain.motor().statedSpeed().isPresent() ? "as stated" : "the speed of the pump curve";
        return curve.basis()
                .and(driveTrain.basis())
                .with("rated speed of the motor: " + ratedSpeed + ", " + rated)
                .with(limits);
    }

    @Override
    public String toString() {
        return curve.name() + " with " + driveTrain + ", " + range.minimum + " to " + range.maximum;
    }

    private Notes ownNotes() {
        Notes own = curve.notes().and(driveTrain.notes());
        if (hasDrive() && !range.stated) {
            own = own.with(
                    PumpProblem.MINIMUM_SPEED_ASSUMED,
                    "The least speed of the drive was not stated; " + range.minimum
                            + ", 25 % of rated speed, is assumed");
        }
        return own.and(overloadNotes());
    }

    /** Looks over the tested range at the greatest speed, where the pump takes most. */
    private Notes overloadNotes() {
        double s = range.maximum.over(curve.speed()).value();
        double low = curve.lowestFlow().si() * s;
        double high = curve.highestFlow().si() * s;
        double most = 0;
        double at = low;
        for (int i = 0; i <= STEPS; i++) {
            double q = low + (high - low) * i / STEPS;
            double watts = curve.shaftWatts(q, s);
            if (watts > most) {
                most = watts;
                at = q;
            }
        }
        Power rated = driveTrain.motor().usable();
        if (most <= rated.watts() * (1 + ROUNDING)) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                PumpProblem.OVERLOAD_WITHIN_CURVE,
                "At " + range.maximum + " the pump takes up to " + Power.watts(most) + ", at "
                        + Flow.cubicMetresPerSecond(at)
                        + (driveTrain.motor().notes().isEmpty()
                                ? "; the motor is rated for " + rated
                                : "; the motor gives " + rated + " where it stands"));
    }

    private void requireRange(Speed minimum, Speed maximum) {
        requireDrive("a range of speeds from " + minimum + " to " + maximum);
        if (minimum.si() <= 0 || minimum.compareTo(maximum) > 0) {
            throw new Refusal(
                    PumpProblem.IMPOSSIBLE_SPEED_RANGE,
                    "Asked for a pump set that turns at " + minimum + " to " + maximum,
                    "The least speed must be above 0 and not above the greatest",
                    "Common are 20 to 30 % of " + ratedSpeed + " for the least, and rated speed for the greatest");
        }
    }

    private static void requirePossible(Speed rated, Motor motor, PumpCurve curve) {
        if (motor.synchronousSpeed(rated).isPresent()) {
            return;
        }
        boolean stated = motor.statedSpeed().isPresent();
        double at50 = 6000.0 / motor.poles();
        throw new Refusal(
                PumpProblem.MOTOR_SPEED_MISMATCH,
                "Asked for a motor of " + motor.poles() + " poles at " + rated
                        + (stated ? ", as stated for it" : ", the speed of the curve of " + curve.name()),
                "At full load a motor of " + motor.poles() + " poles turns at "
                        + Speed.revolutionsPerMinute(at50 * (1 - MOST_SLIP)) + " to "
                        + Speed.revolutionsPerMinute(at50) + " on 50 Hz and 1.2 times that on 60 Hz",
                "Choose another number of poles, or state the rated speed of the motor if the pump was tested at"
                        + " another speed");
    }
}

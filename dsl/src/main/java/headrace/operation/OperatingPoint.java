package headrace.operation;

import headrace.curve.CurvePoint;
import headrace.curve.Duty;
import headrace.drive.Losses;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;

/**
 * A point at which a pump set runs: flow and head, speed, and the power from the wire to the liquid.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The speed ratio is the share of the motor's rated speed.
 *   <dt>Limits
 *   <dd>Those of the pump curve and of the loss model; what was touched stands in the notes.
 *   <dt>Errors
 *   <dd>{@link Refusal}, its problem named at each method.
 *   <dt>Source
 *   <dd>Hydraulic power is ρ·g·Q·H; pump efficiency and overall efficiency as in ISO 17769-1:2012.
 * </dl>
 *
 * @param point flow, head, shaft power, efficiency and speed of the pump
 * @param speedRatio the speed as a share of the motor's rated speed
 * @param hydraulicPower the power that the liquid takes up
 * @param losses the shaft power, the losses of motor and drive one by one, and the wire power
 * @param notes the limits that were touched
 * @param basis what the point rests on
 */
public record OperatingPoint(
        CurvePoint point, Ratio speedRatio, Power hydraulicPower, Losses losses, Notes notes, Basis basis)
        implements Traced {
    private static final double ROUNDING = 1e-9;

    /**
     * Returns the point at which a drive makes the pump deliver a duty.
     *
     * @throws Refusal with {@code DRIVE_MISSING} or {@code DUTY_OUTSIDE_SPEED_RANGE}, and as
     *     {@link headrace.curve.PumpCurve#pointFor}
     */
    public static OperatingPoint at(PumpSet set, Duty duty) {
        set.requireDrive("the speed that delivers " + duty);
        CurvePoint point = set.curve().pointFor(duty);
        boolean fast = point.speed().over(set.maximumSpeed()).value() > 1 + ROUNDING;
        boolean slow = point.speed().over(set.minimumSpeed()).value() < 1 - ROUNDING;
        if (fast || slow) {
            throw new Refusal(
                    OperationProblem.DUTY_OUTSIDE_SPEED_RANGE,
                    "Asked for " + duty + ", which " + set.curve().name() + " delivers at " + point.speed(),
                    "The pump set turns at " + set.minimumSpeed() + " to " + set.maximumSpeed(),
                    fast
                            ? "Choose a larger pump or impeller, or lower the duty"
                            : "Choose a smaller pump or impeller, or state a lower least speed");
        }
        return of(set, point);
    }

    /**
     * Returns the point at a flow and a speed, its head being what the pump gives there.
     *
     * @throws Refusal as {@link headrace.curve.PumpCurve#at}, and with {@code DRIVE_MISSING} for a speed that only a
     *     drive can give
     */
    public static OperatingPoint atSpeed(PumpSet set, Flow flow, Speed speed) {
        if (Math.abs(speed.over(set.ratedSpeed()).value() - 1) > ROUNDING) {
            set.requireDrive(speed + " instead of " + set.ratedSpeed());
        }
        return of(set, set.curve().atSpeed(speed).at(flow));
    }

    /**
     * Returns the point at a flow with the motor on the mains: at rated speed, without the losses of a drive.
     *
     * @throws Refusal as {@link headrace.curve.PumpCurve#at}
     */
    public static OperatingPoint onMains(PumpSet set, Flow flow) {
        return atSpeed(set.onMains(), flow, set.ratedSpeed());
    }

    /**
     * Returns the point at a flow with the motor on the mains at the speed that its slip leaves at this load, without
     * the losses of a drive.
     *
     * @throws Refusal as {@link PumpSet#speedOnMains} and {@link headrace.curve.PumpCurve#at}
     */
    public static OperatingPoint onMainsBySlip(PumpSet set, Flow flow) {
        PumpSet mains = set.onMains();
        Speed speed = mains.speedOnMains(flow);
        OperatingPoint point = of(mains, mains.curve().atSpeed(speed).at(flow));
        return new OperatingPoint(
                point.point,
                point.speedRatio,
                point.hydraulicPower,
                point.losses,
                point.notes,
                point.basis.with("speed on the mains by slip: n = n_sync·(1 − slip·T/T_N), " + speed));
    }

    private static OperatingPoint of(PumpSet set, CurvePoint point) {
        Ratio speedRatio = point.speed().over(set.ratedSpeed());
        Losses losses = set.driveTrain().lossesAt(point.shaftPower(), speedRatio);
        Power hydraulic = point.shaftPower().times(point.efficiency());
        Notes notes = point.notes().and(set.notes()).and(losses.notes());
        return new OperatingPoint(point, speedRatio, hydraulic, losses, notes, set.basis());
    }

    /** Returns the flow. */
    public Flow flow() {
        return point.flow();
    }

    /** Returns the total head. */
    public Head head() {
        return point.head();
    }

    /** Returns the speed of pump and motor. */
    public Speed speed() {
        return point.speed();
    }

    /** Returns the power into the pump's shaft. */
    public Power shaftPower() {
        return point.shaftPower();
    }

    /** Returns the power from the wire: into the drive, or into the motor where there is none. */
    public Power wirePower() {
        return losses.input();
    }

    /** Returns hydraulic power over shaft power. */
    public Ratio pumpEfficiency() {
        return point.efficiency();
    }

    /** Returns hydraulic power over wire power. */
    public Ratio wireToWater() {
        return hydraulicPower.over(wirePower());
    }

    @Override
    public String toString() {
        return flow() + " at " + head() + ", " + speed() + ": " + shaftPower() + " at the shaft, " + wirePower()
                + " at the wire";
    }
}

package headrace.operation.limit;

import headrace.curve.PumpCurve;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import headrace.units.Speed;
import headrace.units.Torque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The greatest torque of the pump within reach at each speed, beside what the motor gives: rated torque up to rated
 * speed, rated power above it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Torque at the shaft.
 *   <dt>Limits
 *   <dd>Steady running: what accelerates the rotor is not in it. What the motor gives is derated where its site is
 *       stated.
 *   <dt>Errors
 *   <dd>As of the reach.
 *   <dt>Source
 *   <dd>Textbook knowledge.
 * </dl>
 *
 * @param rows speed by speed, the least first
 * @param notes what the reach has to say
 * @param basis what it rests on
 */
public record TorqueOverSpeed(List<Row> rows, Notes notes, Basis basis) implements Traced {
    private static final int STEPS = 10;

    /**
     * One speed.
     *
     * @param speed the speed
     * @param pump the greatest torque of the pump over the flows within reach
     * @param motor the torque that the motor gives
     */
    public record Row(Speed speed, Torque pump, Torque motor) {}

    /** Keeps the rows from changing. */
    public TorqueOverSpeed {
        rows = List.copyOf(rows);
    }

    /** Returns the torque over the range of speeds. */
    public static TorqueOverSpeed of(ReachableRegion reach) {
        PumpSet set = reach.set();
        double slow = set.minimumSpeed().si();
        double fast = set.maximumSpeed().si();
        List<Row> rows = new ArrayList<>();
        for (int i = slow < fast ? 0 : STEPS; i <= STEPS; i++) {
            Speed speed = i == STEPS ? set.maximumSpeed() : Speed.radiansPerSecond(slow + (fast - slow) * i / STEPS);
            if (reach.reaches(speed)) {
                rows.add(row(reach, speed));
            }
        }
        return new TorqueOverSpeed(rows, reach.notes(), reach.basis());
    }

    private static Row row(ReachableRegion reach, Speed speed) {
        PumpCurve curve = reach.curveAt(speed);
        ReachableRegion.Flows flows = reach.flowsAt(speed);
        double low = flows.lowest().si();
        double high = flows.highest().si();
        double[] stops = low < high ? Roots.stopsIn(q -> curve.shaftWatts(q, 1), low, high) : new double[] {low};
        double watts =
                Arrays.stream(stops).map(q -> curve.shaftWatts(q, 1)).max().orElseThrow();
        Speed rated = reach.set().ratedSpeed();
        Torque motor = reach.set().driveTrain().motor().usable().over(rated);
        double over = speed.over(rated).value();
        return new Row(speed, Power.watts(watts).over(speed), motor.over(Math.max(1, over)));
    }

    @Override
    public String toString() {
        Row last = rows.get(rows.size() - 1);
        return "up to " + last.pump() + " at " + last.speed() + ", the motor gives " + last.motor();
    }
}

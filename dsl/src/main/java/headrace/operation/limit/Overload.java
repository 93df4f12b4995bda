package headrace.operation.limit;

import headrace.curve.PumpCurve;
import headrace.numeric.RootScan;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * The greatest shaft power within reach, held against what the motor gives.
 *
 * <p>Power over what the motor gives grows with speed: below rated speed the motor gives its rated torque, above it its
 * rated power. So the greatest speed decides, and there the greatest power over the flows that can be reached, in the
 * densest liquid.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shaft power; flows at the greatest speed.
 *   <dt>Limits
 *   <dd>Those of the reach. What the motor gives is its rated power, derated where its site is stated.
 *   <dt>Errors
 *   <dd>None beyond those of the reach.
 *   <dt>Source
 *   <dd>Textbook knowledge.
 * </dl>
 *
 * @param greatest the greatest shaft power
 * @param at the flow at which it is taken
 * @param available what the motor gives at that speed
 * @param from the least flow at which the motor is overloaded, if it is anywhere
 * @param notes the overload, and what the reach has to say
 * @param basis what it rests on
 */
public record Overload(Power greatest, Flow at, Power available, Optional<Flow> from, Notes notes, Basis basis)
        implements Traced {
    private static final double ROUNDING = 1e-9;

    /** Returns the greatest power within reach. */
    public static Overload of(ReachableRegion reach) {
        PumpSet set = reach.set();
        PumpCurve curve = reach.curveAt(set.maximumSpeed());
        ReachableRegion.Flows flows = reach.flowsAt(set.maximumSpeed());
        double low = flows.lowest().si();
        double high = flows.highest().si();
        double most = 0;
        double at = low;
        for (double q : low < high ? Roots.stopsIn(x -> curve.shaftWatts(x, 1), low, high) : new double[] {low}) {
            double watts = curve.shaftWatts(q, 1);
            at = watts > most ? q : at;
            most = Math.max(most, watts);
        }
        Ratio speed = set.maximumSpeed().over(set.ratedSpeed());
        double available = set.driveTrain().motor().usable().watts() * Math.min(1, speed.value());
        Optional<Flow> from = Optional.empty();
        Notes notes = reach.notes();
        if (most > available * (1 + ROUNDING)) {
            from = Optional.of(Flow.cubicMetresPerSecond(overloadFrom(curve, available, low, high)));
            notes = notes.with(
                    LimitProblem.OVERLOAD_WITHIN_REACH,
                    "At " + set.maximumSpeed() + " in " + curve.liquid() + " the pump overloads the motor from "
                            + from.get() + " on and takes up to " + Power.watts(most) + ", at "
                            + Flow.cubicMetresPerSecond(at) + "; the motor gives " + Power.watts(available));
        }
        return new Overload(
                Power.watts(most), Flow.cubicMetresPerSecond(at), Power.watts(available), from, notes, reach.basis());
    }

    private static double overloadFrom(PumpCurve curve, double available, double low, double high) {
        if (curve.shaftWatts(low, 1) > available) {
            return low;
        }
        double[] flows = RootScan.between(q -> curve.shaftWatts(q, 1) - available, low, high);
        return flows.length == 0 ? low : flows[0];
    }

    /** Returns whether the motor is nowhere overloaded within reach. */
    public boolean nonOverloading() {
        return from.isEmpty();
    }

    @Override
    public String toString() {
        return (nonOverloading() ? "non-overloading: at most " : "overloads: up to ") + greatest + " of " + available
                + ", at " + at;
    }
}

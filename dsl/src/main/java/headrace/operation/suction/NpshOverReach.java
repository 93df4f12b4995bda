package headrace.operation.suction;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.numeric.RootScan;
import headrace.numeric.Roots;
import headrace.operation.limit.ReachableRegion;
import headrace.operation.suction.NpshCheck.Terms;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Speed;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * The margin of NPSH over all that a pump set can reach: where it is least, and from which flow on it is used up.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows at the greatest speed.
 *   <dt>Limits
 *   <dd>Looked for at {@value #SPEEDS} speeds of the range and at every flow within reach for which the NPSH required
 *       is known; where its readings end first, the note of the check says so.
 *   <dt>Errors
 *   <dd>As of {@link NpshCheck#of}.
 *   <dt>Source
 *   <dd>As of its parts.
 * </dl>
 *
 * @param reach what the pump set can reach
 * @param terms what the check goes by
 * @param worst the check at the least margin
 * @param usedUpFrom the least flow at the greatest speed at which the margin is used up, if it is
 * @param notes what the worst point and the reach have to say
 */
public record NpshOverReach(ReachableRegion reach, Terms terms, NpshCheck worst, Optional<Flow> usedUpFrom, Notes notes)
        implements Traced {
    private static final int SPEEDS = 17;

    /** Returns the margin over all that can be reached, with the impeller and in the liquid of the pump set. */
    public static NpshOverReach of(ReachableRegion reach, Terms given) {
        Terms terms = given.movedAs(reach.set().curve());
        double slow = reach.set().minimumSpeed().si();
        double fast = reach.set().maximumSpeed().si();
        NpshCheck worst = null;
        for (int i = SPEEDS - 1; i >= 0; i--) {
            Speed speed = i == SPEEDS - 1
                    ? reach.set().maximumSpeed()
                    : Speed.radiansPerSecond(slow + (fast - slow) * i / (SPEEDS - 1));
            if (reach.reaches(speed) && known(reach, terms, speed)) {
                NpshCheck here = NpshCheck.of(worst(reach, terms, speed), terms);
                worst = worst == null || here.margin().compareTo(worst.margin()) < 0 ? here : worst;
            }
        }
        if (worst == null) {
            Speed speed = reach.set().maximumSpeed();
            worst = NpshCheck.of(reach.curveAt(speed).at(reach.flowsAt(speed).lowest()), terms);
        }
        Notes notes = worst.notes().and(reach.notes()).and(beyond(reach, terms));
        return new NpshOverReach(reach, terms, worst, usedUp(reach, terms), notes);
    }

    private static boolean known(ReachableRegion reach, Terms terms, Speed speed) {
        return reach.flowsAt(speed).lowest().compareTo(terms.curve().highestFlow(speed)) <= 0;
    }

    private static double end(ReachableRegion reach, Terms terms, Speed speed) {
        return Math.min(
                reach.flowsAt(speed).highest().si(),
                terms.curve().highestFlow(speed).si());
    }

    private static DoubleUnaryOperator margin(ReachableRegion reach, Terms terms, Speed speed) {
        PumpCurve curve = reach.curveAt(speed);
        return q -> terms.marginMetres(q, curve.headMetres(q, 1), speed);
    }

    private static CurvePoint worst(ReachableRegion reach, Terms terms, Speed speed) {
        double low = reach.flowsAt(speed).lowest().si();
        double high = end(reach, terms, speed);
        DoubleUnaryOperator margin = margin(reach, terms, speed);
        double at = low;
        for (double q : low < high ? Roots.stopsIn(margin, low, high) : new double[] {low}) {
            at = margin.applyAsDouble(q) < margin.applyAsDouble(at) ? q : at;
        }
        return reach.curveAt(speed).at(Flow.cubicMetresPerSecond(at));
    }

    private static Optional<Flow> usedUp(ReachableRegion reach, Terms terms) {
        Speed speed = reach.set().maximumSpeed();
        if (!known(reach, terms, speed)) {
            return Optional.empty();
        }
        double low = reach.flowsAt(speed).lowest().si();
        double high = end(reach, terms, speed);
        DoubleUnaryOperator margin = margin(reach, terms, speed);
        if (margin.applyAsDouble(low) < 0) {
            return Optional.of(Flow.cubicMetresPerSecond(low));
        }
        double[] flows = low < high ? RootScan.between(margin, low, high) : new double[0];
        return flows.length == 0 ? Optional.empty() : Optional.of(Flow.cubicMetresPerSecond(flows[0]));
    }

    private static Notes beyond(ReachableRegion reach, Terms terms) {
        Speed speed = reach.set().maximumSpeed();
        Flow known = terms.curve().highestFlow(speed);
        Flow reached = reach.flowsAt(speed).highest();
        return reached.si() <= known.si() * (1 + 1e-9)
                ? Notes.NONE
                : Notes.NONE.with(
                        headrace.curve.CurveProblem.NPSH_BEYOND_TEST,
                        "The pump set can reach " + reached + " at " + speed + ", and the NPSH required is known up to "
                                + known + ": what it is beyond is not said here");
    }

    @Override
    public Basis basis() {
        return reach.basis().and(worst.basis());
    }

    @Override
    public String toString() {
        return "least margin of NPSH " + worst.margin() + ", at "
                + worst.point().flow() + " and "
                + worst.point().speed()
                + usedUpFrom
                        .map(flow -> "; used up from " + flow + " on at "
                                + reach.set().maximumSpeed())
                        .orElse("");
    }
}

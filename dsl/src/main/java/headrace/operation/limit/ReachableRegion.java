package headrace.operation.limit;

import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpProblem;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Speed;
import java.util.Optional;

/**
 * All that a pump set can reach: every speed of its range, and at each speed the flows that its branch and its curve
 * allow, in the densest liquid that it meets. Limits are sought here and not only at the points that were tested.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows of one pump.
 *   <dt>Limits
 *   <dd>Nothing beyond the curve, extended by choice or not: where the curve ends before the branch does, a note says
 *       that what lies beyond is not known.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_REACH}, and as {@link PumpCurve#atSpeed(Speed)}.
 *   <dt>Source
 *   <dd>A definition of our own.
 * </dl>
 */
public final class ReachableRegion implements Traced {
    private static final double ROUNDING = 1e-9;

    private final PumpSet set;
    private final Flow least;
    private final Optional<Flow> greatest;

    private ReachableRegion(PumpSet set, Flow least, Optional<Flow> greatest) {
        this.set = set;
        this.least = least;
        this.greatest = greatest;
        flowsAt(set.maximumSpeed());
    }

    /** Returns what a pump set can reach on its whole curve. */
    public static ReachableRegion of(PumpSet set) {
        return new ReachableRegion(set, Flow.ZERO, Optional.empty());
    }

    /** Returns what it can reach on a branch that keeps the flow between two limits, at every speed. */
    public ReachableRegion between(Flow leastFlow, Flow greatestFlow) {
        if (leastFlow.si() < 0 || leastFlow.compareTo(greatestFlow) >= 0) {
            throw nothing(leastFlow + " to " + greatestFlow, "The least flow is 0 or more and below the greatest");
        }
        return new ReachableRegion(set, leastFlow, Optional.of(greatestFlow));
    }

    /** Returns what it can reach in a liquid, such as the same water when it is cold and heaviest. */
    public ReachableRegion in(Liquid liquid) {
        return new ReachableRegion(set.with(set.curve().inLiquid(liquid)), least, greatest);
    }

    /** Returns the pump set, its curve in the liquid that was chosen. */
    public PumpSet set() {
        return set;
    }

    /** Returns the greatest flow that the branch lets pass, if that was stated. */
    public Optional<Flow> branchLimit() {
        return greatest;
    }

    /** Returns the curve at a speed. */
    public PumpCurve curveAt(Speed speed) {
        return set.curve().atSpeed(speed);
    }

    /** Returns whether its branch and its curve have a flow in common at a speed. */
    public boolean reaches(Speed speed) {
        return least.compareTo(curveAt(speed).extendedHighestFlow()) <= 0
                && greatest.map(limit -> curveAt(speed).extendedLowestFlow().compareTo(limit) <= 0)
                        .orElse(true);
    }

    /**
     * The flows that can be reached at a speed.
     *
     * @param lowest the least
     * @param highest the greatest
     */
    public record Flows(Flow lowest, Flow highest) {}

    /**
     * Returns the flows that can be reached at a speed.
     *
     * @throws Refusal with {@code IMPOSSIBLE_REACH} if there are none
     */
    public Flows flowsAt(Speed speed) {
        PumpCurve curve = curveAt(speed);
        Flow low = later(least, curve.extendedLowestFlow());
        Flow high = greatest.filter(limit -> limit.compareTo(curve.extendedHighestFlow()) < 0)
                .orElse(curve.extendedHighestFlow());
        if (low.compareTo(high) > 0) {
            throw nothing(
                    least + " to " + greatest.map(Flow::toString).orElse("its end") + " at " + speed,
                    "The curve covers " + curve.extendedLowestFlow() + " to " + curve.extendedHighestFlow() + " there");
        }
        return new Flows(low, high);
    }

    /**
     * Returns the speed at no flow, where the head is greatest: the greatest of the drive, or on the mains the speed at
     * which the motor slips that little.
     */
    public Speed speedAtNoFlow() {
        return set.hasDrive() ? set.maximumSpeed() : set.speedOnMains(Flow.ZERO);
    }

    /**
     * Returns the greatest head, at the speed at no flow and from no flow on, which a closed valve can bring about on
     * any branch.
     *
     * @throws Refusal with {@code SHUT_OFF_UNKNOWN} if the curve begins above no flow
     */
    public Head greatestHead() {
        PumpCurve curve = curveAt(set.maximumSpeed());
        if (curve.extendedLowestFlow().si() > 0) {
            throw new Refusal(
                    PumpProblem.SHUT_OFF_UNKNOWN,
                    "Asked for the greatest head of " + curve.name(),
                    "Its curve begins at " + curve.extendedLowestFlow() + ", and the head is greatest near no flow",
                    "Extend the curve to a flow of 0 by choice, or test the pump against a closed valve");
        }
        PumpCurve fastest = curveAt(speedAtNoFlow());
        double most = 0;
        for (double q : Roots.stopsIn(
                x -> fastest.headMetres(x, 1), 0, fastest.extendedHighestFlow().si())) {
            most = Math.max(most, fastest.headMetres(q, 1));
        }
        return Head.metres(most);
    }

    private static Flow later(Flow one, Flow other) {
        return one.compareTo(other) > 0 ? one : other;
    }

    private Refusal nothing(String asked, String possible) {
        return new Refusal(
                LimitProblem.IMPOSSIBLE_REACH,
                "Asked for what " + set.curve().name() + " can reach from " + asked,
                possible,
                "Give other limits of the branch, or extend the curve by choice");
    }

    @Override
    public Notes notes() {
        PumpCurve fastest = curveAt(set.maximumSpeed());
        Flow end = fastest.extendedHighestFlow();
        if (greatest.filter(limit -> limit.si() <= end.si() * (1 + ROUNDING)).isPresent()) {
            return fastest.notes();
        }
        return fastest.notes()
                .with(
                        LimitProblem.REACH_ENDS_WITH_TEST,
                        "What " + set.curve().name() + " can reach is taken to end with its curve, at " + end + " at "
                                + set.maximumSpeed()
                                + greatest.map(limit -> "; its branch lets " + limit + " pass")
                                        .orElse("; nothing else was said to limit its flow"));
    }

    @Override
    public Basis basis() {
        return set.basis()
                .with("reach: " + set.minimumSpeed() + " to " + set.maximumSpeed() + " in "
                        + set.curve().liquid()
                        + greatest.map(limit -> ", " + least + " to " + limit).orElse(""));
    }

    @Override
    public String toString() {
        Flows flows = flowsAt(set.maximumSpeed());
        return set.minimumSpeed() + " to " + set.maximumSpeed() + ", " + flows.lowest() + " to " + flows.highest();
    }
}

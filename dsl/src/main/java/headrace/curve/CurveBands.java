package headrace.curve;

import headrace.numeric.PolynomialFit;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * How sure a fitted curve is, at the speed of the curve.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Half widths: the band reaches so far to either side.
 *   <dt>Limits
 *   <dd>Only what the scatter of the test points tells: no error that they all share, none of the efficiency over
 *       speed, none of a correction for another liquid. Head and power are taken as scattering independently.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code FLOW_OUT_OF_RANGE} outside the tested range, or with {@code IMPOSSIBLE_CONFIDENCE}.
 *   <dt>Source
 *   <dd>Propagation of uncertainty to first order as in JCGM 100:2008; the shift of the best point from the derivative
 *       of the condition that it fulfils.
 * </dl>
 */
public final class CurveBands {
    private final PumpCurve curve;
    private final FittedCurve<Head> head;
    private final FittedCurve<Power> power;

    private CurveBands(PumpCurve curve) {
        this.curve = curve;
        this.head = curve.headFit();
        this.power = curve.powerFit();
    }

    /** Returns the bands of a curve, if its test has points enough to tell them. */
    static Optional<CurveBands> of(PumpCurve curve) {
        boolean known = curve.headFit().scatter().isPresent()
                && curve.powerFit().scatter().isPresent();
        return known ? Optional.of(new CurveBands(curve)) : Optional.empty();
    }

    /** Returns half the width of the band of the head that many such tests would give on average. */
    public Head meanHeadAt(Flow flow, Ratio confidence) {
        return head.meanBandAt(tested(flow), confidence).orElseThrow().times(headGainAt(flow));
    }

    /** Returns half the width of the band that holds the head of one more reading. */
    public Head singleHeadAt(Flow flow, Ratio confidence) {
        return head.singleTestBandAt(tested(flow), confidence).orElseThrow().times(headGainAt(flow));
    }

    /** Returns half the width of the band of the shaft power that many such tests would give on average. */
    public Power meanShaftPowerAt(Flow flow, Ratio confidence) {
        return power.meanBandAt(tested(flow), confidence).orElseThrow().times(powerGainAt(flow));
    }

    /** Returns half the width of the band that holds the shaft power of one more reading. */
    public Power singleShaftPowerAt(Flow flow, Ratio confidence) {
        return power.singleTestBandAt(tested(flow), confidence).orElseThrow().times(powerGainAt(flow));
    }

    /** Returns half the width of the band of the efficiency that many such tests would give on average. */
    public Ratio meanEfficiencyAt(Flow flow, Ratio confidence) {
        double heads = meanHeadAt(flow, confidence).over(curve.headAt(flow)).value();
        double powers = meanShaftPowerAt(flow, confidence)
                .over(curve.shaftPowerAt(flow))
                .value();
        return curve.efficiencyAt(flow).times(Math.hypot(heads, powers));
    }

    /**
     * Returns half the width of the band of the flow of best efficiency; none where the best point is an end of the
     * tested range, since it may then lie anywhere beyond.
     */
    public Optional<Flow> bestEfficiencyFlow(Ratio confidence) {
        if (curve.notes().has(CurveProblem.BEST_EFFICIENCY_AT_END)) {
            return Optional.empty();
        }
        FittedCurve.checked(confidence);
        double q = tested(curve.bestEfficiencyPoint().flow()).si();
        double byHead = errorOf(head, q) * head.scatter().orElseThrow().student(confidence.value());
        double byPower = errorOf(power, q) * power.scatter().orElseThrow().student(confidence.value());
        double curvature = -1 / (q * q) + bendOfLog(head, q) - bendOfLog(power, q);
        return Optional.of(curve.bestEfficiencyPoint().flow().times(Math.hypot(byHead, byPower) / (-curvature * q)));
    }

    /** At the best point 1/Q + h'/h − p'/p = 0: the standard error of f'/f for one of the two. */
    private static double errorOf(FittedCurve<?> fit, double q) {
        double f = fit.curve().valueAt(q);
        PolynomialFit scatter = fit.scatter().orElseThrow();
        return scatter.standardErrorOf(q, -fit.curve().slopeAt(q) / (f * f), 1 / f);
    }

    /** Returns (f'/f)' = f''/f − (f'/f)². */
    private static double bendOfLog(FittedCurve<?> fit, double q) {
        double f = fit.curve().valueAt(q);
        double slope = fit.curve().slopeAt(q) / f;
        return fit.curve().pieceAt(q).derivative().slopeAt(q) / f - slope * slope;
    }

    private Flow tested(Flow flow) {
        curve.headAt(flow);
        return Flow.cubicMetresPerSecond(
                curve.map().homologous(flow.si(), curve.seen().ratio()));
    }

    private double headGainAt(Flow flow) {
        return curve.map().headGain(flow.si(), curve.seen().ratio());
    }

    private double powerGainAt(Flow flow) {
        return curve.map().powerGain(flow.si(), curve.seen().ratio());
    }

    @Override
    public String toString() {
        return "confidence bands of " + curve.name();
    }
}

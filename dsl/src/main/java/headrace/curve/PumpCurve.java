package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;
import java.util.Optional;

/**
 * Head, shaft power and efficiency of a pump as functions of flow, at one speed and movable to any other.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities at the doors. The methods on bare numbers take flow in m³/s and the speed as a share of this curve's
 *       own {@link #speed()}.
 *   <dt>Limits
 *   <dd>The curve covers the tested flows, moved with the speed, and is not continued beyond them unless the caller
 *       extends it; points beyond are then marked, and only methods that can mark their result give them. Head and
 *       power are fitted; efficiency follows from both. The bare methods check no range: {@link #covers} does.
 *   <dt>Errors
 *   <dd>{@link Refusal}, its problem named at each method. No method returns NaN inside the range of the curve.
 *   <dt>Source
 *   <dd>Terms as in ISO 17769-1:2012; affinity laws and the conversion to the speed of the test as in ISO 9906:2012.
 *       The efficiency over speed follows a named model, see {@link EfficiencyOverSpeed}.
 * </dl>
 */
public final class PumpCurve implements Traced {
    private final Tested tested;
    private final MapAtSpeed seen;
    private final Notes ofTheTest;
    private final Basis ofTheTestBasis;

    private PumpCurve(Tested tested, MapAtSpeed seen, Notes notes, Basis basis) {
        this.tested = tested;
        this.seen = seen;
        this.ofTheTest = notes;
        this.ofTheTestBasis = basis;
    }

    static PumpCurve made(Tested tested, PumpMap map, Notes notes, Basis basis) {
        return new PumpCurve(tested, new MapAtSpeed(map, 1, map.tested()), notes, basis);
    }

    /**
     * Returns the curve nearest the points of a test, at the speed of the test.
     *
     * @throws Refusal with {@code EFFICIENCY_ABOVE_ONE}, {@code HEAD_FALLS_TO_ZERO} or {@code POWER_FALLS_TO_ZERO}
     */
    public static PumpCurve fit(PumpTest test) {
        return CurveFit.fitted(test, HeadShape.FREE);
    }

    /**
     * Returns the curve nearest the points of a test among those whose head has a shape; where the shape moves it, a
     * note says so. Refuses as {@link #fit(PumpTest)} does.
     */
    public static PumpCurve fit(PumpTest test, HeadShape shape) {
        return CurveFit.fitted(test, shape);
    }

    /**
     * Returns the curve through every point of a table without scatter, such as one read off a printed curve.
     *
     * @throws Refusal with {@code REPEATED_FLOWS}, and as {@link #fit(PumpTest)} does
     */
    public static PumpCurve through(PumpTest table) {
        return CurveFit.through(table);
    }

    /** Returns the curve of given formulas; refuses as {@link #fit(PumpTest)} does. */
    public static PumpCurve of(String name, Speed speed, Liquid liquid, CurveFormula formula) {
        return CurveChecks.curveOf(name, speed, liquid, formula);
    }

    /** Returns the pump's name. */
    public String name() {
        return tested.name();
    }

    /** Returns the speed of this curve. */
    public Speed speed() {
        return tested.speed().times(seen.ratio());
    }

    /** Returns the speed of the test. */
    public Speed testedSpeed() {
        return tested.speed();
    }

    /** Returns the impeller's diameter, if the test states it. */
    public Optional<Length> impellerDiameter() {
        return tested.diameter();
    }

    /** Returns what is pumped. */
    public Liquid liquid() {
        return tested.liquid();
    }

    /** Returns what was pumped in the test. */
    public Liquid testedLiquid() {
        return tested.testedIn();
    }

    /** Returns the test's readings brought to its speed, by flow; none if the curve is given as formulas. */
    public List<TestPoint> points() {
        return tested.points();
    }

    /** Returns the head fitted at the speed of the test. */
    public FittedCurve<Head> headFit() {
        return tested.head();
    }

    /** Returns the shaft power fitted at the speed of the test, in the liquid of the test. */
    public FittedCurve<Power> powerFit() {
        return tested.power();
    }

    /** Returns how sure the curve is, at its own speed, if its test has points enough to tell. */
    public Optional<CurveBands> bands() {
        return CurveBands.of(this);
    }

    /** Returns how the efficiency changes with speed. */
    public EfficiencyOverSpeed efficiencyOverSpeed() {
        return map().model();
    }

    /** Returns the least flow that the test covers, at the speed of this curve. */
    public Flow lowestFlow() {
        return seen.flow(map().tested().low());
    }

    /** Returns the greatest flow that the test covers, at the speed of this curve. */
    public Flow highestFlow() {
        return seen.flow(map().tested().high());
    }

    /** Returns the least flow that the caller chose to cover; {@link #lowestFlow()} unless extended. */
    public Flow extendedLowestFlow() {
        return seen.flow(seen.range().low());
    }

    /** Returns the greatest flow that the caller chose to cover; {@link #highestFlow()} unless extended. */
    public Flow extendedHighestFlow() {
        return seen.flow(seen.range().high());
    }

    /**
     * Returns the head at a flow.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} outside the tested range
     */
    public Head headAt(Flow flow) {
        return head(requireTested(flow));
    }

    /** Returns the shaft power at a flow; refuses as {@link #headAt} does. */
    public Power shaftPowerAt(Flow flow) {
        return Power.watts(shaftWatts(requireTested(flow).si(), 1));
    }

    /** Returns the efficiency at a flow; refuses as {@link #headAt} does. */
    public Ratio efficiencyAt(Flow flow) {
        return efficiency(requireTested(flow));
    }

    private Flow requireTested(Flow flow) {
        if (!seen.tested(flow)) {
            throw CurveRefusals.flow(this, flow, map().tested(), seen.covers(flow));
        }
        return flow;
    }

    /** At an end without head rounding may leave a head of less than nothing. */
    private Head head(Flow flow) {
        return Head.metres(Math.max(0, headMetres(flow.si(), 1)));
    }

    private Ratio efficiency(Flow flow) {
        return Ratio.of(Math.max(0, efficiency(flow.si(), 1)));
    }

    /**
     * Returns the point at a flow; marked with {@code EXTENDED_BEYOND_TEST} where the caller has extended the curve.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} outside the range of this curve, or with
     *     {@code HEAD_FALLS_TO_ZERO}, {@code POWER_FALLS_TO_ZERO} or {@code EFFICIENCY_ABOVE_ONE} where the extension
     *     means nothing
     */
    public CurvePoint at(Flow flow) {
        if (!seen.covers(flow)) {
            throw CurveRefusals.flow(this, flow, seen.range(), false);
        }
        return point(flow);
    }

    private CurvePoint point(Flow flow) {
        Notes notes = notes();
        if (!seen.tested(flow)) {
            CurveChecks.meaning(this, flow);
            notes = notes.with(
                    CurveProblem.EXTENDED_BEYOND_TEST,
                    "the point at " + flow + " lies outside the tested " + flows(map().tested()));
        }
        Power power = Power.watts(shaftWatts(flow.si(), 1));
        return new CurvePoint(flow, head(flow), power, efficiency(flow), speed(), notes);
    }

    /** Returns the point of best efficiency inside the tested range. */
    public CurvePoint bestEfficiencyPoint() {
        return point(Flow.cubicMetresPerSecond(map().bestAt(seen.ratio()).flow()));
    }

    /** Returns the greatest shaft power inside the tested range. */
    public Power greatestPower() {
        return Power.watts(map().greatestWatts(seen.ratio()));
    }

    /** Returns the greatest rise of the head with flow inside the tested range, if it rises anywhere. */
    public Optional<Droop> droop() {
        return seen.droop();
    }

    /**
     * Returns every tested flow at which the curve has a head, in increasing order: two or more where it droops.
     *
     * @throws Refusal with {@code HEAD_OUT_OF_RANGE} if the tested curve nowhere has that head
     */
    public List<Flow> flowsAt(Head head) {
        return flowsAt(head, map().tested());
    }

    /**
     * Returns every point at which the curve has a head, in increasing order of flow, marked where it was extended.
     *
     * @throws Refusal with {@code HEAD_OUT_OF_RANGE} if the curve nowhere has that head
     */
    public List<CurvePoint> pointsAt(Head head) {
        return flowsAt(head, seen.range()).stream().map(this::point).toList();
    }

    private List<Flow> flowsAt(Head head, Range within) {
        List<Flow> flows = seen.flowsAt(head, within);
        if (flows.isEmpty()) {
            throw CurveRefusals.head(this, head, within, seen.heads(within));
        }
        return flows;
    }

    /**
     * Returns the speed at which the pump delivers a duty.
     *
     * @throws Refusal with {@code DUTY_OUT_OF_RANGE} if no speed brings it onto the tested curve; {@link #pointFor}
     *     goes through an extended curve
     */
    public Speed speedFor(Duty duty) {
        return speedFor(duty, map().tested());
    }

    /**
     * Returns the point, with its speed, at which the pump delivers a duty; marked where the curve was extended.
     *
     * @throws Refusal with {@code DUTY_OUT_OF_RANGE} if no speed brings it onto the curve, or with
     *     {@code SPEED_OUT_OF_RANGE} if the efficiency model does not hold there
     */
    public CurvePoint pointFor(Duty duty) {
        return atSpeed(speedFor(duty, seen.range())).point(duty.flow());
    }

    private Speed speedFor(Duty duty, Range within) {
        double s = map().speedRatio(duty.flow().si(), duty.head().metres(), within);
        if (s == Double.POSITIVE_INFINITY) {
            throw CurveRefusals.duty(this, duty, within);
        }
        return tested.speed().times(s);
    }

    /**
     * Returns this curve at another speed.
     *
     * @throws Refusal with {@code SPEED_OUT_OF_RANGE} if the speed is not above 0, or outside the efficiency model
     */
    public PumpCurve atSpeed(Speed speed) {
        return moved(seen.at(speed.over(tested.speed()).value()));
    }

    /** Returns this curve at a share of its own speed, refusing as {@link #atSpeed(Speed)} does. */
    public PumpCurve atSpeed(Ratio share) {
        return moved(seen.at(seen.ratio() * share.value()));
    }

    /**
     * Returns this curve with another model of efficiency over speed.
     *
     * @throws Refusal with {@code IMPOSSIBLE_LOSS} if the model takes more than the pump does, or with
     *     {@code SPEED_OUT_OF_RANGE} if it does not hold at the speed of this curve
     */
    public PumpCurve withEfficiencyOverSpeed(EfficiencyOverSpeed model) {
        PumpMap other = map().with(model);
        CurveChecks.loss(name(), other);
        return moved(seen.of(other));
    }

    private PumpCurve moved(MapAtSpeed other) {
        return CurveChecks.speed(new PumpCurve(tested, other, ofTheTest, ofTheTestBasis));
    }

    /**
     * Returns this curve in another liquid: its power goes with the density, and where the liquid is so viscous that it
     * matters, flow, head and efficiency are corrected by ANSI/HI 9.6.7, another correction at every speed.
     *
     * @throws Refusal with {@code VISCOSITY_OUT_OF_RANGE} if the method gives no correction, or with
     *     {@code SPEED_OUT_OF_RANGE} if it gives none at the speed of this curve
     */
    public PumpCurve inLiquid(Liquid other) {
        double density = other.density().over(liquid().density()).value();
        PumpMap corrected = ViscosityCorrection.of(tested, map().similarity(), other)
                .applied(map().similarity().withDensityTimes(density));
        Basis basis = ofTheTestBasis.and(other.basis()).with(ViscosityCorrection.BASIS);
        return CurveChecks.speed(
                new PumpCurve(tested.in(other), seen.of(corrected), ofTheTest.and(other.notes()), basis));
    }

    /**
     * Returns this curve with its impeller turned down.
     *
     * @throws Refusal with {@code DIAMETER_UNKNOWN}, {@code TRIM_OUT_OF_RANGE} or {@code IMPOSSIBLE_TRIM}
     */
    public PumpCurve trimmed(Trim trim) {
        return trim.of(this);
    }

    /** Returns another impeller at the same speed, of the same models and in the same liquid. */
    PumpCurve remade(Tested other, SimilarityMap plain, Notes notes, String choice) {
        PumpMap made = map() instanceof ViscousMap
                ? ViscosityCorrection.of(other, plain, liquid()).applied(plain)
                : plain;
        MapAtSpeed there = new MapAtSpeed(made, seen.ratio(), made.tested());
        return new PumpCurve(other, there, ofTheTest.and(notes), ofTheTestBasis.with(choice));
    }

    /**
     * Returns this curve continued, below or above its tested range, to a flow at its own speed. Its formulas are
     * followed as they are; every point beyond the test is marked.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} if the flow is negative
     */
    public PumpCurve extendedTo(Flow flow) {
        if (flow.si() < 0) {
            throw CurveRefusals.extension(this, flow);
        }
        return new PumpCurve(tested, seen.including(flow), ofTheTest, ofTheTestBasis);
    }

    /** Returns the head in m at a flow in m³/s and a share of this curve's speed. Checks no range. */
    public double headMetres(double q, double s) {
        return seen.map().headMetres(q, s * seen.ratio());
    }

    /** Returns the shaft power in W at a flow in m³/s and a share of this curve's speed. Checks no range. */
    public double shaftWatts(double q, double s) {
        return seen.map().shaftWatts(q, s * seen.ratio());
    }

    /** Returns the efficiency at a flow in m³/s and a share of this curve's speed. Checks no range. */
    public double efficiency(double q, double s) {
        return seen.map().efficiency(q, s * seen.ratio());
    }

    /** Fills head, shaft power and efficiency at many flows and shares of this curve's speed. Checks no range. */
    public void fill(CurveArrays arrays) {
        seen.map().fill(arrays, seen.ratio());
    }

    /**
     * Fills head, shaft power and efficiency at the first flows and one share of this curve's speed, which is quicker
     * than {@link #fill}; the speeds of the arrays are not looked at. Checks no range.
     */
    public void fillAt(double s, CurveArrays arrays, int count) {
        seen.map().fillAt(s * seen.ratio(), arrays, count);
    }

    /** Fills the heads alone at the first flows and shares of this curve's speed. Checks no range. */
    public void fillHeads(CurveArrays arrays, int count) {
        seen.map().fillHeads(arrays, seen.ratio(), count);
    }

    /**
     * Fills by how much head and shaft power change with flow and with speed, at the first flows and one share of this
     * curve's speed, where {@link #fillAt} has filled the values. Checks no range.
     */
    public void fillSlopesAt(double s, CurveArrays arrays, CurveSlopes slopes, int count) {
        seen.map().fillSlopesAt(s * seen.ratio(), arrays, slopes, count);
        for (int i = 0; seen.ratio() != 1 && i < count; i++) {
            slopes.headOverSpeed()[i] *= seen.ratio();
            slopes.powerOverSpeed()[i] *= seen.ratio();
        }
    }

    /** Returns the least flow in m³/s of this curve, extended or not, at a share of its speed. */
    public double lowestFlowAt(double s) {
        return seen.map().actual(seen.range().low(), s * seen.ratio());
    }

    /** Returns the greatest flow in m³/s of this curve, extended or not, at a share of its speed. */
    public double highestFlowAt(double s) {
        return seen.map().actual(seen.range().high(), s * seen.ratio());
    }

    /**
     * Returns the least and the greatest flow in m³/s of this curve, extended or not, at a share of its speed, and
     * between them every flow at which the shaft power turns; increasing.
     */
    public double[] powerStopsAt(double s) {
        return seen.map().powerStops(s * seen.ratio(), seen.range());
    }

    /**
     * Returns whether every speed is the tested one at another scale, so that the shaft power turns at flows in
     * proportion to speed; not where viscosity is corrected.
     */
    public boolean isSimilarAtAllSpeeds() {
        return seen.map() instanceof SimilarityMap;
    }

    /** Returns the stretches of this curve, by flow, over each of which the shaft power only rises or only falls. */
    public List<PowerStretch> powerStretches() {
        return PowerStretch.of(seen);
    }

    /**
     * Returns the share of this curve's speed at which it gives a head in m at a flow in m³/s, or infinity if no speed
     * does within the range of this curve, extended or not.
     */
    public double speedRatioFor(double q, double metres) {
        return seen.map().speedRatio(q, metres, seen.range()) / seen.ratio();
    }

    /**
     * Fills, for many flows in m³/s and heads in m, the share of this curve's speed that delivers each, as
     * {@link #speedRatioFor} gives it.
     *
     * @param flows the flows
     * @param heads the heads, as many
     * @param shares to be filled, as long
     */
    public void fillSpeedRatios(double[] flows, double[] heads, double[] shares) {
        seen.map().fillSpeedRatios(flows, heads, shares, seen.range());
        for (int i = 0; seen.ratio() != 1 && i < shares.length; i++) {
            shares[i] /= seen.ratio();
        }
    }

    /** Returns whether a flow in m³/s at a share of this curve's speed lies inside the tested range. */
    public boolean covers(double q, double s) {
        return map().tested().holds(map().homologous(q, s * seen.ratio()));
    }

    PumpMap map() {
        return seen.map();
    }

    MapAtSpeed seen() {
        return seen;
    }

    Tested tested() {
        return tested;
    }

    /** Returns a range of homologous flows in words, at the speed of this curve. */
    String flows(Range shown) {
        return seen.flows(shown, 1);
    }

    PumpCurve with(Notes more) {
        return new PumpCurve(tested, seen, ofTheTest.and(more), ofTheTestBasis);
    }

    @Override
    public Notes notes() {
        return ofTheTest.and(map().notesAt(seen.ratio())).and(CurveChecks.notesOf(this));
    }

    @Override
    public Basis basis() {
        return ofTheTestBasis.with("efficiency over speed: " + map().model().name());
    }

    /** Returns the name, the range and the best point in one line. */
    @Override
    public String toString() {
        CurvePoint best = bestEfficiencyPoint();
        return name() + " at " + speed() + ": " + flows(map().tested()) + ", best efficiency " + best.efficiency()
                + " at " + best.flow() + " and " + best.head();
    }
}

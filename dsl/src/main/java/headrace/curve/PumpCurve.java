package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.curve.PumpMap.Rise;
import headrace.liquid.Liquid;
import headrace.numeric.SmoothCurve;
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
import java.util.stream.DoubleStream;

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
    private final PumpMap map;
    private final double ratio;
    private final Range range;
    private final Notes ofTheTest;
    private final Basis ofTheTestBasis;

    private PumpCurve(Tested tested, PumpMap map, double ratio, Range range, Notes notes, Basis basis) {
        this.tested = tested;
        this.map = map;
        this.ratio = ratio;
        this.range = range;
        this.ofTheTest = notes;
        this.ofTheTestBasis = basis;
    }

    PumpMap map() {
        return map;
    }

    double ratio() {
        return ratio;
    }

    Tested tested() {
        return tested;
    }

    PumpCurve with(Notes more) {
        return new PumpCurve(tested, map, ratio, range, ofTheTest.and(more), ofTheTestBasis);
    }

    static PumpCurve made(Tested tested, PumpMap map, Notes notes, Basis basis) {
        return new PumpCurve(tested, map, 1, map.tested(), notes, basis);
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
     * note says so.
     *
     * @throws Refusal as {@link #fit(PumpTest)} does
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

    /**
     * Returns the curve of given formulas.
     *
     * @throws Refusal with {@code EFFICIENCY_ABOVE_ONE}, {@code HEAD_FALLS_TO_ZERO} or {@code POWER_FALLS_TO_ZERO}
     */
    public static PumpCurve of(String name, Speed speed, Liquid liquid, CurveFormula formula) {
        return CurveChecks.curveOf(name, speed, liquid, formula);
    }

    /** Returns the pump's name. */
    public String name() {
        return tested.name();
    }

    /** Returns the speed of this curve. */
    public Speed speed() {
        return tested.speed().times(ratio);
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

    /**
     * Returns the test's readings brought to the speed of the test, by flow; none if the curve is given as formulas.
     */
    public List<TestPoint> points() {
        return tested.points();
    }

    /** Returns the head fitted at the speed of the test. */
    public FittedCurve<Head> headFit() {
        return tested.head();
    }

    /** Returns the shaft power fitted at the speed of the test. */
    public FittedCurve<Power> powerFit() {
        return tested.power();
    }

    /** Returns how sure the curve is, at its own speed, if its test has points enough to tell. */
    public Optional<CurveBands> bands() {
        return CurveBands.of(this);
    }

    /** Returns how the efficiency changes with speed. */
    public EfficiencyOverSpeed efficiencyOverSpeed() {
        return map.model();
    }

    /** Returns the least flow that the test covers, at the speed of this curve. */
    public Flow lowestFlow() {
        return flowOf(map.tested().low());
    }

    /** Returns the greatest flow that the test covers, at the speed of this curve. */
    public Flow highestFlow() {
        return flowOf(map.tested().high());
    }

    /** Returns the least flow that the caller chose to cover; {@link #lowestFlow()} unless extended. */
    public Flow extendedLowestFlow() {
        return flowOf(range.low());
    }

    /** Returns the greatest flow that the caller chose to cover; {@link #highestFlow()} unless extended. */
    public Flow extendedHighestFlow() {
        return flowOf(range.high());
    }

    private Flow flowOf(double homologous) {
        return Flow.cubicMetresPerSecond(map.actual(homologous, ratio));
    }

    String flows(Range shown) {
        return flowsAtShare(shown, Ratio.of(1));
    }

    String flowsAtShare(Range shown, Ratio share) {
        double s = ratio * share.value();
        return Flow.cubicMetresPerSecond(map.actual(shown.low(), s)) + " to "
                + Flow.cubicMetresPerSecond(map.actual(shown.high(), s));
    }

    /**
     * Returns the head at a flow.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} outside the tested range
     */
    public Head headAt(Flow flow) {
        return Head.metres(headMetres(requireTested(flow), 1));
    }

    /**
     * Returns the shaft power at a flow.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} outside the tested range
     */
    public Power shaftPowerAt(Flow flow) {
        return Power.watts(shaftWatts(requireTested(flow), 1));
    }

    /**
     * Returns the efficiency at a flow.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} outside the tested range
     */
    public Ratio efficiencyAt(Flow flow) {
        return Ratio.of(efficiency(requireTested(flow), 1));
    }

    private double requireTested(Flow flow) {
        double x = map.homologous(flow.si(), ratio);
        if (!map.tested().holds(x)) {
            throw CurveRefusals.flow(this, flow, map.tested(), range.holds(x));
        }
        return flow.si();
    }

    /**
     * Returns the point at a flow; marked with {@code EXTENDED_BEYOND_TEST} where the caller has extended the curve.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} outside the range of this curve, or with
     *     {@code HEAD_FALLS_TO_ZERO}, {@code POWER_FALLS_TO_ZERO} or {@code EFFICIENCY_ABOVE_ONE} where the extension
     *     means nothing
     */
    public CurvePoint at(Flow flow) {
        if (!range.holds(map.homologous(flow.si(), ratio))) {
            throw CurveRefusals.flow(this, flow, range, false);
        }
        return point(flow);
    }

    private CurvePoint point(Flow flow) {
        double q = flow.si();
        Head head = Head.metres(headMetres(q, 1));
        Power power = Power.watts(shaftWatts(q, 1));
        Notes notes = notes();
        if (!covers(q, 1)) {
            CurveChecks.meaning(this, flow, map.tested());
            notes = notes.with(
                    CurveProblem.EXTENDED_BEYOND_TEST,
                    "the point at " + flow + " lies outside the tested " + flows(map.tested()));
        }
        return new CurvePoint(flow, head, power, Ratio.of(efficiency(q, 1)), speed(), notes);
    }

    /** Returns the point of best efficiency inside the tested range. */
    public CurvePoint bestEfficiencyPoint() {
        return point(Flow.cubicMetresPerSecond(map.bestAt(ratio).flow()));
    }

    /** Returns the greatest rise of the head with flow inside the tested range, if it rises anywhere. */
    public Optional<Droop> droop() {
        Rise rise = map.headRise(ratio);
        return rise.by() == 0
                ? Optional.empty()
                : Optional.of(new Droop(
                        Head.metres(rise.by()),
                        Flow.cubicMetresPerSecond(rise.from()),
                        Flow.cubicMetresPerSecond(rise.to()),
                        Head.metres(headMetres(rise.to(), 1))));
    }

    /**
     * Returns every tested flow at which the curve has a head, in increasing order: two or more where it droops.
     *
     * @throws Refusal with {@code HEAD_OUT_OF_RANGE} if the tested curve nowhere has that head
     */
    public List<Flow> flowsAt(Head head) {
        return flowsAt(head, map.tested());
    }

    /**
     * Returns every point at which the curve has a head, in increasing order of flow, marked where it was extended.
     *
     * @throws Refusal with {@code HEAD_OUT_OF_RANGE} if the curve nowhere has that head
     */
    public List<CurvePoint> pointsAt(Head head) {
        return flowsAt(head, range).stream().map(this::point).toList();
    }

    private List<Flow> flowsAt(Head head, Range within) {
        double[] flows = map.flowsAt(head.metres(), ratio, within);
        if (flows.length == 0) {
            flows = endsAt(head, within);
        }
        if (flows.length == 0) {
            throw CurveRefusals.head(this, head, within, map.extremeHeads(ratio, within));
        }
        return DoubleStream.of(flows).mapToObj(Flow::cubicMetresPerSecond).toList();
    }

    /** A head typed as printed may miss the head at an end by rounding. */
    private double[] endsAt(Head head, Range within) {
        double nothing = PumpMap.ROUNDING * map.extremeHeads(ratio, within)[1];
        return DoubleStream.of(within.low(), within.high())
                .map(x -> map.actual(x, ratio))
                .filter(q -> Math.abs(headMetres(q, 1) - head.metres()) <= nothing)
                .toArray();
    }

    /**
     * Returns the speed at which the pump delivers a duty.
     *
     * @throws Refusal with {@code DUTY_OUT_OF_RANGE} if no speed brings it onto the tested curve; {@link #pointFor}
     *     goes through an extended curve
     */
    public Speed speedFor(Duty duty) {
        return speedFor(duty, map.tested());
    }

    /**
     * Returns the point, with its speed, at which the pump delivers a duty; marked where the curve was extended.
     *
     * @throws Refusal with {@code DUTY_OUT_OF_RANGE} if no speed brings it onto the curve, or with
     *     {@code SPEED_OUT_OF_RANGE} if the efficiency model does not hold there
     */
    public CurvePoint pointFor(Duty duty) {
        return atSpeed(speedFor(duty, range)).point(duty.flow());
    }

    private Speed speedFor(Duty duty, Range within) {
        double s = map.speedRatio(duty.flow().si(), duty.head().metres(), within);
        if (s == Double.POSITIVE_INFINITY) {
            throw CurveRefusals.duty(this, duty, within);
        }
        return tested.speed().times(s);
    }

    /** Returns the speed at which a flow is the homologous one. */
    Speed speedAtWhich(Flow flow, double homologous) {
        return tested.speed().times(flow.si() / homologous);
    }

    /**
     * Returns this curve at another speed.
     *
     * @throws Refusal with {@code SPEED_OUT_OF_RANGE} if the speed is not above 0, or outside the efficiency model
     */
    public PumpCurve atSpeed(Speed speed) {
        return moved(map, speed.over(tested.speed()).value());
    }

    /** Returns this curve at a share of its own speed, refusing as {@link #atSpeed(Speed)} does. */
    public PumpCurve atSpeed(Ratio share) {
        return moved(map, ratio * share.value());
    }

    /**
     * Returns this curve with another model of efficiency over speed.
     *
     * @throws Refusal with {@code IMPOSSIBLE_LOSS} if the model takes more than the pump does, or with
     *     {@code SPEED_OUT_OF_RANGE} if it does not hold at the speed of this curve
     */
    public PumpCurve withEfficiencyOverSpeed(EfficiencyOverSpeed model) {
        PumpMap other = map.with(model);
        CurveChecks.loss(name(), other);
        return moved(other, ratio);
    }

    private PumpCurve moved(PumpMap other, double speedRatio) {
        double slowest = other.slowest();
        double fastest = other.model().fastest();
        boolean slowEnough = speedRatio <= fastest * (1 + PumpMap.ROUNDING);
        boolean fastEnough = speedRatio > 0 && speedRatio >= slowest * (1 - PumpMap.ROUNDING);
        if (!slowEnough || !fastEnough) {
            throw CurveRefusals.speed(
                    this,
                    tested.speed().times(speedRatio),
                    tested.speed().times(slowest),
                    fastest < Double.POSITIVE_INFINITY
                            ? " and at most " + tested.speed().times(fastest)
                            : "");
        }
        return new PumpCurve(tested, other, speedRatio, range, ofTheTest, ofTheTestBasis);
    }

    /**
     * Returns this curve in another liquid: its power goes with the density, and where the liquid is so viscous that it
     * matters, flow, head and efficiency are corrected by ANSI/HI 9.6.7, another correction at every speed.
     *
     * @throws Refusal with {@code VISCOSITY_OUT_OF_RANGE} if the method gives no correction, or with
     *     {@code SPEED_OUT_OF_RANGE} if it gives none at the speed of this curve
     */
    public PumpCurve inLiquid(Liquid other) {
        PumpMap plain = map.similarity()
                .withDensityTimes(other.density().over(liquid().density()).value());
        PumpMap corrected =
                ViscosityCorrection.of(tested, map.similarity(), other).applied(plain.similarity());
        Basis basis = ofTheTestBasis.and(other.basis()).with(ViscosityCorrection.BASIS);
        PumpCurve moved = new PumpCurve(tested.in(other), corrected, ratio, range, ofTheTest.and(other.notes()), basis);
        return moved.moved(corrected, ratio);
    }

    /**
     * Returns this curve with its impeller turned down.
     *
     * @throws Refusal with {@code DIAMETER_UNKNOWN}, {@code TRIM_OUT_OF_RANGE} or {@code IMPOSSIBLE_TRIM}
     */
    public PumpCurve trimmed(Trim trim) {
        return trim.of(this);
    }

    /** Returns the greatest shaft power inside the tested range. */
    public Power greatestPower() {
        return Power.watts(map.greatestWatts(ratio));
    }

    /** Returns this curve of another head and power, with the same models, speed and liquid. */
    PumpCurve remade(Tested other, SmoothCurve head, SmoothCurve power, Range flows) {
        PumpMap plain =
                SimilarityMap.of(head, power, flows, map.similarity().weight()).with(map.model());
        PumpMap made = map instanceof ViscousMap
                ? ViscosityCorrection.of(other, plain.similarity(), liquid()).applied(plain.similarity())
                : plain;
        return new PumpCurve(other, made, ratio, flows, ofTheTest, ofTheTestBasis);
    }

    PumpCurve resting(String choice) {
        return new PumpCurve(tested, map, ratio, range, ofTheTest, ofTheTestBasis.with(choice));
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
        Range wider = range.including(map.homologous(flow.si(), ratio));
        return new PumpCurve(tested, map, ratio, wider, ofTheTest, ofTheTestBasis);
    }

    /** Returns the head in m at a flow in m³/s and a share of this curve's speed. Checks no range. */
    public double headMetres(double q, double s) {
        return map.headMetres(q, s * ratio);
    }

    /** Returns the shaft power in W at a flow in m³/s and a share of this curve's speed. Checks no range. */
    public double shaftWatts(double q, double s) {
        return map.shaftWatts(q, s * ratio);
    }

    /** Returns the efficiency at a flow in m³/s and a share of this curve's speed. Checks no range. */
    public double efficiency(double q, double s) {
        return map.efficiency(q, s * ratio);
    }

    /**
     * Returns the share of this curve's speed at which it gives a head in m at a flow in m³/s, or infinity if no speed
     * does within the range of this curve, extended or not.
     */
    public double speedRatioFor(double q, double metres) {
        return map.speedRatio(q, metres, range) / ratio;
    }

    /** Returns whether a flow in m³/s at a share of this curve's speed lies inside the tested range. */
    public boolean covers(double q, double s) {
        return map.tested().holds(map.homologous(q, s * ratio));
    }

    @Override
    public Notes notes() {
        return ofTheTest.and(map.notesAt(ratio)).and(CurveChecks.notesOf(this, ratio, range, map.tested()));
    }

    @Override
    public Basis basis() {
        return ofTheTestBasis.with("efficiency over speed: " + map.model().name());
    }

    /** Returns the name, the range and the best point in one line. */
    @Override
    public String toString() {
        CurvePoint best = bestEfficiencyPoint();
        return name() + " at " + speed() + ": " + flows(map.tested()) + ", best efficiency " + best.efficiency()
                + " at " + best.flow() + " and " + best.head();
    }
}

package headrace.curve;

import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.problem.Note;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.Arrays;
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
 *   <dd>{@link Refusal}, its problem named at each method. No method returns NaN.
 *   <dt>Source
 *   <dd>Terms as in ISO 17769-1:2012; affinity laws and the conversion to the speed of the test as in ISO 9906:2012.
 *       The efficiency over speed follows a named model, see {@link EfficiencyOverSpeed}.
 * </dl>
 */
public final class PumpCurve implements Traced {
    /** Between these shares of the tested speed pump tests have borne out the affinity laws: common practice. */
    private static final double SLOWEST = 0.3;

    private static final double FASTEST = 1.2;

    private final Tested tested;
    private final CurveMap map;
    private final double ratio;
    private final double from;
    private final double to;
    private final Notes notes;
    private final Basis basis;

    /** What does not change when a curve is moved. */
    private record Tested(String name, Speed speed, Liquid liquid, FittedCurve<Head> head, FittedCurve<Power> power) {}

    private PumpCurve(Tested tested, CurveMap map, double ratio, double[] range, Notes notes, Basis basis) {
        this.tested = tested;
        this.map = map;
        this.ratio = ratio;
        this.from = range[0];
        this.to = range[1];
        this.notes = notes;
        this.basis = basis;
    }

    /**
     * Returns the curve nearest the points of a test, at the speed of the test.
     *
     * @throws Refusal with {@code EFFICIENCY_ABOVE_ONE}, {@code HEAD_FALLS_TO_ZERO} or {@code POWER_FALLS_TO_ZERO}
     */
    public static PumpCurve fit(PumpTest test) {
        CurveFit fit = new CurveFit(test);
        double low = fit.lowest();
        double high = fit.headEnd(low, fit.highest());
        CurveFormula formula = new CurveFormula(
                fit.head.polynomial(),
                fit.power.polynomial(),
                Flow.cubicMetresPerSecond(low),
                Flow.cubicMetresPerSecond(high));
        Tested tested = new Tested(
                test.name(),
                test.speed(),
                test.liquid(),
                FittedCurve.of(Head.KIND, fit.head, fit.hasScatter()),
                FittedCurve.of(Power.KIND, fit.power, fit.hasScatter()));
        Notes notes = fit.notes();
        if (high < fit.highest()) {
            notes = notes.with(
                    CurveProblem.HEAD_FALLS_TO_ZERO,
                    "the fitted head reaches 0 at " + formula.highest()
                            + ", where the curve ends, before the last point at "
                            + Flow.cubicMetresPerSecond(fit.highest()));
        }
        Basis basis = test.basis()
                .and(test.liquid().basis())
                .with("head of " + test.name() + ": polynomial of degree "
                        + fit.head.polynomial().degree())
                .with("shaft power of " + test.name() + ": polynomial of degree "
                        + fit.power.polynomial().degree());
        return made(tested, formula, notes, basis);
    }

    /**
     * Returns the curve of given formulas.
     *
     * @throws Refusal with {@code EFFICIENCY_ABOVE_ONE} or {@code POWER_FALLS_TO_ZERO}
     */
    public static PumpCurve of(String name, Speed speed, Liquid liquid, CurveFormula formula) {
        Tested tested = new Tested(
                name,
                speed,
                liquid,
                FittedCurve.known(Head.KIND, formula.headMetres()),
                FittedCurve.known(Power.KIND, formula.shaftWatts()));
        return made(tested, formula, liquid.notes(), liquid.basis().with(name + ": given as formulas"));
    }

    private static PumpCurve made(Tested tested, CurveFormula formula, Notes notes, Basis basis) {
        double low = formula.lowest().si();
        double high = formula.highest().si();
        CurveFit.requirePower(tested.name, formula.shaftWatts(), low, high);
        double weight = tested.liquid.density().si() * Liquid.STANDARD_GRAVITY;
        CurveMap map = CurveMap.of(formula.headMetres(), formula.shaftWatts(), low, high, weight);
        CurveFit.requireWhole(tested.name, map, tested.liquid);
        return new PumpCurve(tested, map, 1, new double[] {low, high}, notes.and(CurveShape.notes(map)), basis);
    }

    /** Returns the pump's name. */
    public String name() {
        return tested.name;
    }

    /** Returns the speed of this curve. */
    public Speed speed() {
        return tested.speed.times(ratio);
    }

    /** Returns the speed of the test. */
    public Speed testedSpeed() {
        return tested.speed;
    }

    /** Returns what is pumped. */
    public Liquid liquid() {
        return tested.liquid;
    }

    /** Returns the least flow that the test covers, at the speed of this curve. */
    public Flow lowestFlow() {
        return Flow.cubicMetresPerSecond(map.low() * ratio);
    }

    /** Returns the greatest flow that the test covers, at the speed of this curve. */
    public Flow highestFlow() {
        return Flow.cubicMetresPerSecond(map.high() * ratio);
    }

    /** Returns the least flow of the range that the caller chose, {@link #lowestFlow()} unless extended. */
    public Flow extendedLowestFlow() {
        return Flow.cubicMetresPerSecond(from * ratio);
    }

    /** Returns the greatest flow of the range that the caller chose, {@link #highestFlow()} unless extended. */
    public Flow extendedHighestFlow() {
        return Flow.cubicMetresPerSecond(to * ratio);
    }

    /** Returns the head fitted at the speed of the test. */
    public FittedCurve<Head> headFit() {
        return tested.head;
    }

    /** Returns the shaft power fitted at the speed of the test. */
    public FittedCurve<Power> powerFit() {
        return tested.power;
    }

    /** Returns how the efficiency changes with speed. */
    public EfficiencyOverSpeed efficiencyOverSpeed() {
        return map.model();
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

    /**
     * Returns the point at a flow; marked with {@code EXTENDED_BEYOND_TEST} where the caller has extended the curve.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} outside the range of this curve, or with
     *     {@code HEAD_FALLS_TO_ZERO}, {@code POWER_FALLS_TO_ZERO} or {@code EFFICIENCY_ABOVE_ONE} where the extension
     *     means nothing
     */
    public CurvePoint at(Flow flow) {
        return point(requireCovered(flow), 1);
    }

    private CurvePoint point(double q, double s) {
        Flow flow = Flow.cubicMetresPerSecond(q);
        Notes own = notes;
        if (!within(q, s, map.low(), map.high())) {
            requireMeaning(q, s);
            own = own.with(
                    CurveProblem.EXTENDED_BEYOND_TEST,
                    "the point at " + flow + " lies outside the tested " + rangeAt(s * ratio, map.low(), map.high()));
        }
        return new CurvePoint(
                flow,
                Head.metres(headMetres(q, s)),
                Power.watts(shaftWatts(q, s)),
                Ratio.of(efficiency(q, s)),
                speed().times(s),
                own);
    }

    private void requireMeaning(double q, double s) {
        boolean head = headMetres(q, s) >= 0;
        boolean power = shaftWatts(q, s) > 0;
        if (head && power && efficiency(q, s) <= 1) {
            return;
        }
        CurveProblem problem = CurveProblem.EFFICIENCY_ABOVE_ONE;
        if (!head) {
            problem = CurveProblem.HEAD_FALLS_TO_ZERO;
        } else if (!power) {
            problem = CurveProblem.POWER_FALLS_TO_ZERO;
        }
        throw new Refusal(
                problem,
                "Asked for a point at " + Flow.cubicMetresPerSecond(q) + " on the extended curve of " + name()
                        + ", where it gives " + Head.metres(headMetres(q, s)) + " and "
                        + Power.watts(shaftWatts(q, s)),
                "The tested range is " + rangeAt(s * ratio, map.low(), map.high()),
                "Extend less far, or test the pump up to the flow you need");
    }

    /** Returns the point of best efficiency inside the tested range. */
    public CurvePoint bestEfficiencyPoint() {
        return point(map.bestAt(ratio).flow(), 1);
    }

    /** Returns the rise of the head with flow, if it rises anywhere. */
    public Optional<Droop> droop() {
        return CurveShape.droop(map.head(), map.low(), map.high(), ratio);
    }

    /**
     * Returns every tested flow at which the curve has a head, in increasing order: two or more where it droops.
     *
     * @throws Refusal with {@code HEAD_OUT_OF_RANGE} if the tested curve nowhere has that head
     */
    public List<Flow> flowsAt(Head head) {
        return flowsAt(head, map.low(), map.high()).stream()
                .map(Flow::cubicMetresPerSecond)
                .toList();
    }

    /**
     * Returns every point at which the curve has a head, in increasing order of flow, marked where it was extended.
     *
     * @throws Refusal with {@code HEAD_OUT_OF_RANGE} if the curve nowhere has that head
     */
    public List<CurvePoint> pointsAt(Head head) {
        return flowsAt(head, from, to).stream().map(q -> point(q, 1)).toList();
    }

    private List<Double> flowsAt(Head head, double low, double high) {
        double scaled = head.metres() / (ratio * ratio);
        double[] roots = map.head().plus(Polynomial.of(-scaled)).rootsIn(low, high);
        if (roots.length == 0) {
            roots = endsNear(scaled, low, high);
        }
        if (roots.length == 0) {
            double[] heads = extremes(low, high);
            throw new Refusal(
                    CurveProblem.HEAD_OUT_OF_RANGE,
                    "Asked for the flow at which " + name() + " has a head of " + head + " at " + speed(),
                    "Over " + rangeAt(ratio, low, high) + " it has heads from "
                            + Head.metres(heads[0] * ratio * ratio) + " to "
                            + Head.metres(heads[1] * ratio * ratio),
                    "Ask within those heads, or change the speed");
        }
        return Arrays.stream(roots).mapToObj(x -> x * ratio).toList();
    }

    /** A head typed as printed may miss the end of the curve by rounding. */
    private double[] endsNear(double metres, double low, double high) {
        double[] heads = extremes(low, high);
        return Arrays.stream(new double[] {low, high})
                .filter(q -> Math.abs(map.head().valueAt(q) - metres) <= CurveMap.ROUNDING * heads[1])
                .toArray();
    }

    private double[] extremes(double low, double high) {
        double[] heads = DoubleStream.concat(
                        DoubleStream.of(low, high),
                        Arrays.stream(map.head().derivative().rootsIn(low, high)))
                .map(map.head()::valueAt)
                .sorted()
                .toArray();
        return new double[] {heads[0], heads[heads.length - 1]};
    }

    /**
     * Returns the speed at which the pump delivers a duty.
     *
     * @throws Refusal with {@code DUTY_OUT_OF_RANGE} if no speed brings it onto the tested curve; {@link #pointFor}
     *     goes through an extended curve
     */
    public Speed speedFor(Duty duty) {
        double q = duty.flow().si();
        double s = map.speedRatio(q, duty.head().metres(), map.low(), map.high());
        return tested.speed.times(requireReached(duty, s, map.low(), map.high()));
    }

    /**
     * Returns the point, with its speed, at which the pump delivers a duty; marked where the curve was extended.
     *
     * @throws Refusal with {@code DUTY_OUT_OF_RANGE} if no speed brings it onto the curve
     */
    public CurvePoint pointFor(Duty duty) {
        double q = duty.flow().si();
        double s = requireReached(duty, map.speedRatio(q, duty.head().metres(), from, to), from, to);
        return atSpeed(tested.speed.times(s)).point(q, 1);
    }

    private double requireReached(Duty duty, double s, double low, double high) {
        if (s < Double.POSITIVE_INFINITY) {
            return s;
        }
        double slowest = duty.flow().si() / high;
        double least = map.headMetres(duty.flow().si(), slowest);
        throw new Refusal(
                CurveProblem.DUTY_OUT_OF_RANGE,
                "Asked for the speed at which " + name() + " delivers " + duty,
                duty.head().metres() < least
                        ? "At the flow of the duty the curve begins with " + Head.metres(least) + " at "
                                + tested.speed.times(slowest) + ", where it covers " + rangeAt(slowest, low, high)
                        : "The curve begins at a flow of " + Flow.cubicMetresPerSecond(low) + " at " + tested.speed
                                + ", and the duty asks for less flow at its head",
                "Choose a pump whose tested range holds the duty, or extend this curve and take the marked result");
    }

    /**
     * Returns this curve at another speed.
     *
     * @throws Refusal with {@code SPEED_OUT_OF_RANGE} if the speed is not above 0, or so low that the efficiency model
     *     leaves nothing
     */
    public PumpCurve atSpeed(Speed speed) {
        double moved = speed.over(tested.speed).value();
        if (!(moved > 0) || !meansSomething(moved)) {
            throw new Refusal(
                    CurveProblem.SPEED_OUT_OF_RANGE,
                    "Asked for the curve of " + name() + " at " + speed,
                    "The speed must be above 0, and high enough that the efficiency, "
                            + map.model().name() + ", stays above 0",
                    "Leave a stopped pump out instead, or choose another efficiency model");
        }
        Notes own = plainNotes(CurveProblem.SPEED_FAR_FROM_TEST);
        if (moved < SLOWEST || moved > FASTEST) {
            own = own.with(
                    CurveProblem.SPEED_FAR_FROM_TEST,
                    speed + " is " + Numbers.print(moved) + " of the tested " + tested.speed
                            + "; the affinity laws are borne out from " + Numbers.print(SLOWEST) + " to "
                            + Numbers.print(FASTEST));
        }
        return new PumpCurve(tested, map, moved, new double[] {from, to}, own, basis());
    }

    private boolean meansSomething(double s) {
        double efficiency = map.efficiency(map.best().flow() * s, s);
        return efficiency > 0.01 * map.best().efficiency() && efficiency <= 1;
    }

    private Notes plainNotes(CurveProblem without) {
        return Notes.of(
                notes.list().stream().filter(n -> n.problem() != without).toArray(Note[]::new));
    }

    /** Returns this curve at a share of its own speed. */
    public PumpCurve atSpeed(Ratio share) {
        return atSpeed(speed().times(share));
    }

    /**
     * Returns this curve continued, below or above its tested range, to a flow at its own speed. Its formulas are
     * followed as they are; every point beyond the test is marked.
     *
     * @throws Refusal with {@code FLOW_OUT_OF_RANGE} if the flow is negative
     */
    public PumpCurve extendedTo(Flow flow) {
        double q = flow.si() / ratio;
        if (q < 0) {
            throw new Refusal(
                    CurveProblem.FLOW_OUT_OF_RANGE,
                    "Asked to extend the curve of " + name() + " to " + flow,
                    "A curve can be extended to a flow of 0 or more",
                    "Check the sign");
        }
        double[] range = {Math.min(from, q), Math.max(to, q)};
        Notes own = plainNotes(CurveProblem.CURVE_EXTENDED);
        if (range[0] < map.low() || range[1] > map.high()) {
            own = own.with(
                    CurveProblem.CURVE_EXTENDED,
                    "the curve of " + name() + " was continued by choice to " + rangeAt(1, range[0], range[1]) + " at "
                            + tested.speed + "; tested were " + rangeAt(1, map.low(), map.high()));
        }
        return new PumpCurve(tested, map, ratio, range, own, basis);
    }

    /**
     * Returns this curve with another model of efficiency over speed.
     *
     * @throws Refusal with {@code IMPOSSIBLE_LOSS} if the model takes more than the pump does
     */
    public PumpCurve withEfficiencyOverSpeed(EfficiencyOverSpeed model) {
        CurveFit.requireLossBelow(name(), model, map);
        return new PumpCurve(tested, map.with(model), ratio, new double[] {from, to}, notes, basis);
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
     * does within the range of this curve.
     */
    public double speedRatioFor(double q, double metres) {
        return map.speedRatio(q, metres, from, to) / ratio;
    }

    /** Returns whether a flow in m³/s at a share of this curve's speed lies inside the tested range. */
    public boolean covers(double q, double s) {
        return within(q, s, map.low(), map.high());
    }

    private boolean within(double q, double s, double low, double high) {
        double x = q / (s * ratio);
        return x >= low - CurveMap.ROUNDING * high && x <= high * (1 + CurveMap.ROUNDING);
    }

    private double requireTested(Flow flow) {
        boolean beyond = within(flow.si(), 1, from, to);
        return requireWithin(
                flow,
                map.low(),
                map.high(),
                beyond
                        ? "Ask for the point at that flow, which is marked as extended"
                        : "Ask within that range, extend the curve by choice, or test the pump up to that flow");
    }

    private double requireCovered(Flow flow) {
        return requireWithin(
                flow, from, to, "Ask within that range, extend the curve by choice, or test the pump up to that flow");
    }

    private double requireWithin(Flow flow, double low, double high, String next) {
        if (!within(flow.si(), 1, low, high)) {
            throw new Refusal(
                    CurveProblem.FLOW_OUT_OF_RANGE,
                    "Asked for the curve of " + name() + " at " + flow,
                    "At " + speed() + " it covers " + rangeAt(ratio, low, high),
                    next);
        }
        return flow.si();
    }

    private static String rangeAt(double s, double low, double high) {
        return Flow.cubicMetresPerSecond(low * s) + " to " + Flow.cubicMetresPerSecond(high * s);
    }

    @Override
    public Notes notes() {
        return notes;
    }

    @Override
    public Basis basis() {
        return basis.with("efficiency over speed: " + map.model().name());
    }

    /** Returns the name, the range and the best point in one line. */
    @Override
    public String toString() {
        CurvePoint best = bestEfficiencyPoint();
        return name() + " at " + speed() + ": " + lowestFlow() + " to " + highestFlow() + ", best efficiency "
                + best.efficiency() + " at " + best.flow() + " and " + best.head();
    }
}

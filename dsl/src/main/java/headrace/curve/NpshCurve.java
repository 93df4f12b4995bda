package headrace.curve;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;
import java.util.Optional;

/**
 * The NPSH that a pump requires, over flow and speed: {@code NPSH3 = sᵐ·(a + b·(Q/s)²)}, fitted to its readings.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Head of the liquid; {@code s} is the speed as a share of that of the test.
 *   <dt>Limits
 *   <dd>The tested flows, moved with the speed. Below them the value at the least one stands in, noted, as it does not
 *       fall below its own fit there; above them only by choice. {@code m} is 2 above the tested speed and 1.3 below,
 *       each the careful end of what is found. A trim and another liquid change it only through {@link #movedAs}: a
 *       trim leaves it at the same flow, noted with its difference; a liquid so viscous that the pump curve is
 *       corrected asks for more, and a hot one is given no credit.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NPSH_UNKNOWN}, {@code IMPOSSIBLE_NPSH} or {@code NPSH_OUT_OF_RANGE}.
 *   <dt>Source
 *   <dd>Form, exponents and the rule for a trim: common practice, no source. Viscous liquids: ANSI/HI 9.6.7, from
 *       memory. NPSH3 as in ISO 17769-1:2012: at 3 % drop of head.
 * </dl>
 */
public final class NpshCurve implements Traced {
    private static final int FEWEST = 3;
    private static final double UPWARD = 2;
    private static final double DOWNWARD = 1.3;
    private static final double ROUNDING = 1e-9;

    private final PumpTest test;
    private final double constant;
    private final double square;
    private final double low;
    private final double tested;
    private final double high;
    private final NpshMove move;

    private NpshCurve(PumpTest test, double[] fit, double[] range, NpshMove move) {
        this.test = test;
        this.move = move;
        this.constant = fit[0];
        this.square = fit[1];
        this.low = range[0];
        this.tested = range[1];
        this.high = range[2];
    }

    /** Returns the curve nearest the readings of NPSH in a test, by least squares. */
    public static NpshCurve of(PumpTest test) {
        double to = test.speed().si();
        List<double[]> points = test.npsh().stream()
                .map(point -> {
                    double s = to / point.speed().si();
                    return new double[] {point.flow().si() * s, point.required().si() * s * s};
                })
                .toList();
        double low = points.stream().mapToDouble(p -> p[0]).min().orElse(0);
        double high = points.stream().mapToDouble(p -> p[0]).max().orElse(0);
        long different = points.stream().mapToDouble(p -> p[0]).distinct().count();
        if (different < FEWEST) {
            throw new Refusal(
                    CurveProblem.NPSH_UNKNOWN,
                    "Asked for the NPSH that " + test.name() + " requires, with readings at " + different
                            + " different flows",
                    "It takes readings at three flows at least",
                    "Add the column NPSH [m] to the pump file, or take the curve from its maker");
        }
        double[] fit = fit(points, high);
        if (fit[1] < 0 || fit[0] + fit[1] * low * low <= 0) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_NPSH,
                    "Fitted an NPSH of " + Numbers.print(fit[0]) + " m and " + Numbers.print(fit[1])
                            + " m for each (m³/s)² to " + test.name(),
                    "What a pump requires is above 0 and rises with flow",
                    "Check the readings and their unit");
        }
        return new NpshCurve(test, fit, new double[] {low, high, high}, NpshMove.NONE);
    }

    private static double[] fit(List<double[]> points, double high) {
        double meanX =
                points.stream().mapToDouble(p -> square(p[0] / high)).average().orElseThrow();
        double meanY = points.stream().mapToDouble(p -> p[1]).average().orElseThrow();
        double across = 0;
        double along = 0;
        for (double[] p : points) {
            double x = square(p[0] / high) - meanX;
            across += x * x;
            along += x * (p[1] - meanY);
        }
        double slope = along / across;
        return new double[] {meanY - slope * meanX, slope / (high * high)};
    }

    private static double square(double x) {
        return x * x;
    }

    /** Returns this curve continued to a flow at the tested speed; values beyond the test are marked. */
    public NpshCurve extendedTo(Flow flow) {
        return with(Math.max(high, flow.si()), move);
    }

    /**
     * Returns this curve as the pump requires it with the impeller and in the liquid of one of its curves.
     *
     * @throws Refusal with {@code NPSH_OUT_OF_RANGE} in a viscous liquid if the readings end before best efficiency
     */
    public NpshCurve movedAs(PumpCurve curve) {
        return with(high, NpshMove.as(curve, this).requireKnown(this, high));
    }

    private NpshCurve with(double highest, NpshMove moved) {
        return new NpshCurve(test, new double[] {constant, square}, new double[] {low, tested, highest}, moved);
    }

    /** Returns the diameter of the impeller with which it was read, if stated. */
    public Optional<Length> impellerDiameter() {
        return test.impellerDiameter();
    }

    /** Returns the pump's name. */
    public String name() {
        return test.name();
    }

    /** Returns the speed of the test. */
    public Speed testedSpeed() {
        return test.speed();
    }

    /** Returns the readings. */
    public List<NpshPoint> points() {
        return test.npsh();
    }

    /** Returns the greatest flow that is covered at a speed. */
    public Flow highestFlow(Speed speed) {
        return flow(high, ratio(speed));
    }

    /** Returns the greatest flow with a reading, at a speed. */
    public Flow highestTestedFlow(Speed speed) {
        return flow(tested, ratio(speed));
    }

    /** Returns the least flow with a reading, at a speed. */
    public Flow lowestFlow(Speed speed) {
        return flow(low, ratio(speed));
    }

    private Flow flow(double read, double s) {
        return Flow.cubicMetresPerSecond(read * s * move.flowShare(s));
    }

    /**
     * What a pump requires.
     *
     * @param npsh the NPSH required
     * @param notes what was assumed and which limits were touched
     */
    public record Required(Head npsh, Notes notes) {}

    /**
     * Returns the NPSH required at a flow and a speed.
     *
     * @throws Refusal with {@code NPSH_OUT_OF_RANGE} above the flows that are covered
     */
    public Required at(Flow flow, Speed speed) {
        double s = ratio(speed);
        double x = flow.si() / (s * move.flowShare(s));
        if (!(s > 0 && x >= 0 && x <= high * (1 + ROUNDING))) {
            throw new Refusal(
                    CurveProblem.NPSH_OUT_OF_RANGE,
                    "Asked for the NPSH that " + name() + " requires at " + flow + " and " + speed,
                    "Its readings end at " + highestFlow(speed) + " there",
                    "Ask within the readings, or extend them by choice");
        }
        Notes notes = move.notesAt(s, metresAtBest(s));
        if (Math.abs(s - 1) > ROUNDING) {
            notes = notes.with(
                    CurveProblem.NPSH_SPEED_ASSUMED,
                    "The NPSH required was read at " + test.speed() + "; at " + speed
                            + " it is taken to go with the speed to the power " + Numbers.print(exponent(s))
                            + ", of the 1.3 to 2 that are found");
        }
        if (x > tested * (1 + ROUNDING) || x < low * (1 - ROUNDING)) {
            notes = notes.with(
                    CurveProblem.NPSH_BEYOND_TEST,
                    "The NPSH required at " + flow + " lies outside its readings from " + lowestFlow(speed) + " to "
                            + flow(tested, s) + " at " + speed
                            + (x < low ? "; that of the least one stands in" : ""));
        }
        return new Required(Head.metres(metres(flow.si(), s)), notes);
    }

    /** Returns the NPSH required in m at a flow in m³/s and a share of the tested speed. Checks no range. */
    public double metres(double q, double s) {
        return inWater(q / (s * move.flowShare(s)), s) * move.times(s, metresAtBest(s));
    }

    private double metresAtBest(double s) {
        return inWater(move.bestFlow(), s);
    }

    /** Returns the NPSH in water at a flow of the readings, moved with the speed. */
    private double inWater(double flow, double s) {
        double x = Math.max(low, flow);
        return Math.pow(s, exponent(s)) * (constant + square * x * x);
    }

    private static double exponent(double s) {
        return s > 1 ? UPWARD : DOWNWARD;
    }

    private double ratio(Speed speed) {
        return speed.over(test.speed()).value();
    }

    /** Returns the share of the tested speed that a speed is. */
    public Ratio share(Speed speed) {
        return Ratio.of(ratio(speed));
    }

    @Override
    public Notes notes() {
        return test.notes();
    }

    @Override
    public Basis basis() {
        return test.basis()
                .with("NPSH required: a + b·Q² through " + test.npsh().size()
                        + " readings, over speed to the power 2 upward and 1.3 downward; the same after a trim, more in"
                        + " viscous liquids by ANSI/HI 9.6.7 (from memory)");
    }

    @Override
    public String toString() {
        return "NPSH required by " + name() + ": " + Head.metres(metres(tested, 1)) + " at "
                + Flow.cubicMetresPerSecond(tested) + " and " + test.speed();
    }
}

package headrace.curve;

import headrace.liquid.Liquid;
import headrace.numeric.DegreeChoice;
import headrace.numeric.Polynomial;
import headrace.numeric.PolynomialFit;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Brings the points of a test to its speed and fits head and shaft power.
 *
 * <p>A head read at a lower speed is enlarged on its way to the test's speed, and its error with it: its weight falls
 * accordingly.
 */
final class CurveFit {
    /** A residual beyond so many standard deviations of the fit without it is called an outlier. */
    private static final double OUTLIER = 3.5;

    private final PumpTest test;
    private final List<TestPoint> points;
    private final double[] flows;
    private final double[] heads;
    private final double[] powers;
    final PolynomialFit head;
    final PolynomialFit power;

    CurveFit(PumpTest test) {
        this.test = test;
        this.points = test.points().stream()
                .sorted(Comparator.comparing(TestPoint::flow)
                        .thenComparing(TestPoint::head)
                        .thenComparing(TestPoint::shaftPower)
                        .thenComparing(TestPoint::speed))
                .toList();
        int n = points.size();
        flows = new double[n];
        heads = new double[n];
        powers = new double[n];
        double[] headWeights = new double[n];
        double[] powerWeights = new double[n];
        for (int i = 0; i < n; i++) {
            TestPoint point = points.get(i);
            double ratio = test.speed().si() / point.speed().si();
            double square = ratio * ratio;
            flows[i] = point.flow().si() * ratio;
            heads[i] = point.head().si() * square;
            powers[i] = point.shaftPower().si() * square * ratio;
            headWeights[i] = 1 / (square * square);
            powerWeights[i] = 1 / (square * square * square);
            refuseAboveWhole(point);
        }
        head = DegreeChoice.fit(flows, heads, headWeights);
        power = DegreeChoice.fit(flows, powers, powerWeights);
    }

    private void refuseAboveWhole(TestPoint point) {
        double hydraulic =
                test.liquid().pressureOf(point.head()).pascals() * point.flow().cubicMetresPerSecond();
        double efficiency = hydraulic / point.shaftPower().watts();
        if (efficiency > 1) {
            throw new Refusal(
                    CurveProblem.EFFICIENCY_ABOVE_ONE,
                    "The point at " + point.flow() + ", " + point.head() + " and " + point.shaftPower() + " of "
                            + test.name() + " has an efficiency of " + Ratio.of(efficiency),
                    "A pump gives less hydraulic power than it takes at its shaft, in " + test.liquid() + " too",
                    "Check the units of flow, head and power");
        }
    }

    boolean hasScatter() {
        return points.size() >= DegreeChoice.FEWEST_POINTS;
    }

    double lowest() {
        return Arrays.stream(flows).min().orElseThrow();
    }

    double highest() {
        return Arrays.stream(flows).max().orElseThrow();
    }

    Notes notes() {
        Notes notes = test.liquid().notes().and(test.notes());
        if (!hasScatter()) {
            notes = notes.with(
                    CurveProblem.FEW_POINTS,
                    points.size()
                            + " points: the curve of lowest degree through or nearest them, no residual, no band");
        }
        long different = Arrays.stream(flows).distinct().count();
        if (different < points.size()) {
            notes = notes.with(
                    CurveProblem.REPEATED_FLOWS,
                    points.size() + " points at " + different + " different flows: all were kept as repeated readings");
        }
        return hasScatter()
                ? notes.and(outliers(Head.KIND, head, heads)).and(outliers(Power.KIND, power, powers))
                : notes;
    }

    private <Q extends Quantity<Q>> Notes outliers(Kind<Q> kind, PolynomialFit fit, double[] values) {
        Notes notes = Notes.NONE;
        for (int i = 0; i < values.length; i++) {
            double deviation = fit.studentisedDeletedResidual(i);
            if (Math.abs(deviation) > OUTLIER) {
                Q read = kind.make().apply(values[i]);
                Q expected = kind.make().apply(fit.polynomial().valueAt(flows[i]));
                notes = notes.with(
                        CurveProblem.OUTLYING_POINT,
                        "the " + kind.name() + " of " + read + " at " + Flow.cubicMetresPerSecond(flows[i])
                                + " lies " + Numbers.print(Math.abs(deviation))
                                + " standard deviations from the curve through the others, limit "
                                + Numbers.print(OUTLIER) + "; the curve gives " + expected);
            }
        }
        return notes;
    }

    /** Returns the first flow in the range at which the fitted head reaches 0, or the end of the range. */
    double headEnd(double low, double high) {
        Polynomial curve = head.polynomial();
        double[] roots = curve.rootsIn(low, high);
        if (!(curve.valueAt(low) > 0) || roots.length > 0 && roots[0] <= low) {
            throw new Refusal(
                    CurveProblem.HEAD_FALLS_TO_ZERO,
                    "The head fitted to " + test.name() + " is " + Head.metres(curve.valueAt(low)) + " at "
                            + Flow.cubicMetresPerSecond(low),
                    "A pump curve has a head above 0 where it begins",
                    "Look for a wrong head or flow among the first points");
        }
        return roots.length == 0 ? high : roots[0];
    }

    static void requirePower(String name, Polynomial power, double low, double high) {
        double lowest = lowest(power, low, high);
        if (!(power.valueAt(lowest) > 0)) {
            throw new Refusal(
                    CurveProblem.POWER_FALLS_TO_ZERO,
                    "The shaft power of " + name + " is " + Power.watts(power.valueAt(lowest)) + " at "
                            + Flow.cubicMetresPerSecond(lowest),
                    "A turning pump takes more than no power over its whole range",
                    "Look for a wrong power or unit among the points");
        }
    }

    private static double lowest(Polynomial polynomial, double low, double high) {
        double where = polynomial.valueAt(low) <= polynomial.valueAt(high) ? low : high;
        for (double q : polynomial.derivative().rootsIn(low, high)) {
            where = polynomial.valueAt(q) < polynomial.valueAt(where) ? q : where;
        }
        return where;
    }

    static void requireLossBelow(String name, EfficiencyOverSpeed model, CurveMap map) {
        if (model instanceof EfficiencyOverSpeed.MechanicalLoss split) {
            double least = map.power().valueAt(lowest(map.power(), map.low(), map.high()));
            if (split.loss().watts() >= least) {
                throw new Refusal(
                        CurveProblem.IMPOSSIBLE_LOSS,
                        "Asked for a mechanical loss of " + split.loss() + " in " + name,
                        "It must stay below the least shaft power of the curve, " + Power.watts(least),
                        "Take 1 to 5 % of the power at best efficiency if nothing better is known");
            }
        }
    }

    static void requireWhole(String name, CurveMap map, Liquid liquid) {
        if (map.best().efficiency() > 1) {
            throw new Refusal(
                    CurveProblem.EFFICIENCY_ABOVE_ONE,
                    "The curve of " + name + " has an efficiency of "
                            + Ratio.of(map.best().efficiency()) + " at "
                            + Flow.cubicMetresPerSecond(map.best().flow()),
                    "A pump gives less hydraulic power than it takes at its shaft, in " + liquid + " too",
                    "Check the units of flow, head and power");
        }
    }
}

package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.numeric.DegreeChoice;
import headrace.numeric.Polynomial;
import headrace.numeric.PolynomialFit;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

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
    private final PolynomialFit head;
    private final PolynomialFit power;

    CurveFit(PumpTest test) {
        this.test = test;
        List<TestPoint> read = test.points().stream()
                .sorted(Comparator.comparing(TestPoint::flow)
                        .thenComparing(TestPoint::head)
                        .thenComparing(TestPoint::shaftPower)
                        .thenComparing(TestPoint::speed))
                .toList();
        read.forEach(this::refuseAboveWhole);
        points = read.stream().map(point -> point.atSpeed(test.speed())).toList();
        flows = numbers(points, point -> point.flow().si());
        heads = numbers(points, point -> point.head().si());
        powers = numbers(points, point -> point.shaftPower().si());
        head = DegreeChoice.fit(flows, heads, numbers(read, point -> weight(point.speed(), 4)));
        power = DegreeChoice.fit(flows, powers, numbers(read, point -> weight(point.speed(), 6)));
    }

    private static double[] numbers(List<TestPoint> points, ToDoubleFunction<TestPoint> what) {
        return points.stream().mapToDouble(what).toArray();
    }

    private double weight(Speed speed, int power) {
        return Math.pow(speed.over(test.speed()).value(), power);
    }

    private void refuseAboveWhole(TestPoint point) {
        Ratio efficiency = point.efficiencyIn(test.liquid());
        if (efficiency.value() > 1) {
            throw CurveRefusals.aboveWhole(
                    "The point at " + point.flow() + ", " + point.head() + " and " + point.shaftPower() + " of "
                            + test.name(),
                    efficiency,
                    test.liquid());
        }
    }

    PumpCurve curve() {
        Tested tested = new Tested(
                test.name(),
                test.speed(),
                test.impellerDiameter(),
                test.liquid(),
                points,
                FittedCurve.of(Head.KIND, head, hasScatter()),
                FittedCurve.of(Power.KIND, power, hasScatter()));
        Range range = range();
        Basis basis = test.basis()
                .and(test.liquid().basis())
                .with(tested.name() + ": " + tested.head())
                .with(tested.name() + ": " + tested.power());
        return CurveChecks.checked(tested, head.polynomial(), power.polynomial(), range, notes(range), basis);
    }

    private boolean hasScatter() {
        return points.size() >= DegreeChoice.FEWEST_POINTS;
    }

    /** The range ends where scatter about a last point with little head takes the fitted head to 0. */
    private Range range() {
        double low = flows[0];
        double high = highest();
        Polynomial curve = head.polynomial();
        if (!(curve.valueAt(low) > 0)) {
            throw CurveChecks.headBelowZero(test.name(), curve, low);
        }
        double[] ends = curve.rootsIn(low, high);
        return new Range(low, ends.length == 0 ? high : ends[0]);
    }

    private double highest() {
        return flows[flows.length - 1];
    }

    private Notes notes(Range range) {
        Notes notes = test.liquid().notes().and(test.notes());
        if (!hasScatter()) {
            notes = notes.with(
                    CurveProblem.FEW_POINTS,
                    points.size()
                            + " points: the curve of lowest degree through or nearest them, no residual, no band");
        }
        long different = points.stream().map(TestPoint::flow).distinct().count();
        if (different < points.size()) {
            notes = notes.with(
                    CurveProblem.REPEATED_FLOWS,
                    points.size() + " points at " + different + " different flows: all were kept as repeated readings");
        }
        if (range.high() < highest()) {
            notes = notes.with(
                    CurveProblem.HEAD_FALLS_TO_ZERO,
                    "the fitted head reaches 0 at " + Flow.cubicMetresPerSecond(range.high())
                            + ", where the curve ends, before the last point at "
                            + Flow.cubicMetresPerSecond(highest()));
        }
        return hasScatter()
                ? notes.and(outliers(Head.KIND, head, heads)).and(outliers(Power.KIND, power, powers))
                : notes;
    }

    private <Q extends Quantity<Q>> Notes outliers(Kind<Q> kind, PolynomialFit fit, double[] values) {
        Notes notes = Notes.NONE;
        for (int i = 0; i < values.length; i++) {
            double deviation = Math.abs(fit.studentisedDeletedResidual(i));
            if (deviation > OUTLIER) {
                notes = notes.with(
                        CurveProblem.OUTLYING_POINT,
                        "the " + kind.name() + " of " + kind.make().apply(values[i]) + " at "
                                + Flow.cubicMetresPerSecond(flows[i]) + " lies " + Numbers.print(deviation)
                                + " standard deviations from the curve through the others, limit "
                                + Numbers.print(OUTLIER) + "; the curve gives "
                                + kind.make().apply(fit.polynomial().valueAt(flows[i])));
            }
        }
        return notes;
    }
}

package headrace.curve;

import headrace.numeric.SmoothCurve;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Ratio;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A test whose points are brought to its speed and put in the order of their flows.
 *
 * <p>A head read at a lower speed is enlarged on the way, and its error with it: its weight falls accordingly.
 */
final class ReducedTest {
    private final PumpTest test;
    private final List<TestPoint> read;
    private final List<TestPoint> points;

    /** Refuses with {@code EFFICIENCY_ABOVE_ONE} a point that gives more than it takes. */
    ReducedTest(PumpTest test) {
        this.test = test;
        read = test.points().stream()
                .sorted(Comparator.comparing(
                                (TestPoint point) -> point.atSpeed(test.speed()).flow())
                        .thenComparing(TestPoint::head)
                        .thenComparing(TestPoint::shaftPower)
                        .thenComparing(TestPoint::speed))
                .toList();
        read.forEach(this::refuseAboveWhole);
        points = read.stream().map(point -> point.atSpeed(test.speed())).toList();
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

    PumpTest test() {
        return test;
    }

    List<TestPoint> points() {
        return points;
    }

    double[] flows() {
        return numbers(points, point -> point.flow().si());
    }

    double[] heads() {
        return numbers(points, point -> point.head().si());
    }

    double[] powers() {
        return numbers(points, point -> point.shaftPower().si());
    }

    double[] headWeights() {
        return numbers(read, point -> weight(point, 4));
    }

    double[] powerWeights() {
        return numbers(read, point -> weight(point, 6));
    }

    private double weight(TestPoint point, int power) {
        return Math.pow(point.speed().over(test.speed()).value(), power);
    }

    private static double[] numbers(List<TestPoint> points, ToDoubleFunction<TestPoint> what) {
        return points.stream().mapToDouble(what).toArray();
    }

    long differentFlows() {
        return points.stream().map(TestPoint::flow).distinct().count();
    }

    /** Returns the tested range, which ends where a fitted head reaches 0 before the last point. */
    PumpMap.Range range(SmoothCurve head) {
        double low = points.get(0).flow().si();
        double high = highest().si();
        if (!(head.valueAt(low) > 0)) {
            throw CurveChecks.headBelowZero(test.name(), head, low);
        }
        double[] ends = head.argumentsOf(0, low, high);
        return new PumpMap.Range(low, ends.length == 0 ? high : ends[0]);
    }

    Flow highest() {
        return points.get(points.size() - 1).flow();
    }

    Notes notes(PumpMap.Range range) {
        Notes notes = test.liquid().notes().and(test.notes());
        if (differentFlows() < points.size()) {
            notes = notes.with(
                    CurveProblem.REPEATED_FLOWS,
                    points.size() + " points at " + differentFlows()
                            + " different flows: all were kept as repeated readings");
        }
        if (range.high() < highest().si()) {
            notes = notes.with(
                    CurveProblem.HEAD_FALLS_TO_ZERO,
                    "the fitted head reaches 0 at " + Flow.cubicMetresPerSecond(range.high())
                            + ", where the curve ends, before the last point at " + highest());
        }
        return notes;
    }

    Basis basis() {
        return test.basis().and(test.liquid().basis());
    }
}

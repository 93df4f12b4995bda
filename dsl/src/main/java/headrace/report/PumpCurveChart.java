package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Symbol;
import headrace.curve.CurveBands;
import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.curve.TestPoint;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Head, shaft power and efficiency over flow: the points, the curve, and the band where one more reading would fall.
 */
final class PumpCurveChart {
    private static final int STEPS = 100;
    private static final double ROUNDING = 1e-9;

    private final PumpCurve curve;
    private final Ruler flow = Ruler.of(Flow.KIND);
    private final Ruler head = Ruler.of(Head.KIND);
    private final Ruler power = Ruler.of(Power.KIND);
    private final Ruler efficiency = Ruler.of(Ratio.KIND);

    private PumpCurveChart(PumpCurve curve) {
        this.curve = curve;
    }

    static Chart of(PumpCurve curve) {
        return new PumpCurveChart(curve).chart();
    }

    private Chart chart() {
        CurvePoint best = curve.bestEfficiencyPoint();
        List<Mark> heads = new ArrayList<>(band(
                q -> curve.headMetres(q, 1),
                (bands, at) -> bands.singleHeadAt(at, PumpCurveReport.CONFIDENCE),
                head,
                "95 % band of one more reading"));
        heads.addAll(line(q -> head.on(curve.headMetres(q, 1)), Ink.BLUE, "head"));
        heads.addAll(points(head, point -> point.head().si()));
        List<Mark> powers = new ArrayList<>(band(
                q -> curve.shaftWatts(q, 1),
                (bands, at) -> bands.singleShaftPowerAt(at, PumpCurveReport.CONFIDENCE),
                power,
                ""));
        powers.addAll(line(q -> power.on(curve.shaftWatts(q, 1)), Ink.VERMILION, "shaft power"));
        powers.addAll(points(power, point -> point.shaftPower().si()));
        List<Mark> efficiencies =
                new ArrayList<>(line(q -> efficiency.on(curve.efficiency(q, 1)), Ink.GREEN, "efficiency"));
        efficiencies.addAll(
                points(efficiency, point -> point.efficiencyIn(curve.liquid()).si()));
        efficiencies.add(Points.at(
                        flow.on(best.flow().si()),
                        efficiency.on(best.efficiency().si()))
                .as(Symbol.DIAMOND)
                .in(Ink.GREEN)
                .labelled("best: " + best.efficiency() + " at " + best.flow()));
        return Chart.titled(curve.name() + " at " + curve.speed() + ", " + curve.liquid())
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head"), heads)
                .panel(power.axis("Shaft power").from(0), powers)
                .panel(efficiency.axis("Efficiency").from(0), efficiencies)
                .caption("Efficiency over speed: " + curve.efficiencyOverSpeed().name() + ".")
                .build();
    }

    /** Returns the curve over its tested range, and what the caller has added to it dashed. */
    private List<Mark> line(DoubleUnaryOperator value, Ink ink, String label) {
        List<Mark> lines = new ArrayList<>();
        double low = curve.lowestFlow().si();
        double high = curve.highestFlow().si();
        lines.add(part(value, low, high).in(ink).labelled(label));
        if (curve.extendedHighestFlow().si() > high * (1 + ROUNDING)) {
            lines.add(
                    part(value, high, curve.extendedHighestFlow().si()).in(ink).extended(true));
        }
        if (curve.extendedLowestFlow().si() < low - ROUNDING * high) {
            lines.add(part(value, curve.extendedLowestFlow().si(), low).in(ink).extended(true));
        }
        return lines;
    }

    private Line part(DoubleUnaryOperator value, double from, double to) {
        double[] flows = flows(from, to);
        return Line.through(
                flow.on(flows),
                IntStream.range(0, flows.length)
                        .mapToDouble(i -> value.applyAsDouble(flows[i]))
                        .toArray());
    }

    /** Returns the band about a curve, if there are points enough to tell it. */
    private List<Mark> band(
            DoubleUnaryOperator si, BiFunction<CurveBands, Flow, Quantity<?>> halfWidth, Ruler up, String label) {
        Optional<CurveBands> bands = curve.bands();
        if (bands.isEmpty()) {
            return List.of();
        }
        double[] flows = flows(curve.lowestFlow().si(), curve.highestFlow().si());
        double[] lower = new double[flows.length];
        double[] upper = new double[flows.length];
        for (int i = 0; i < flows.length; i++) {
            double middle = si.applyAsDouble(flows[i]);
            double half = halfWidth
                    .apply(bands.get(), Flow.cubicMetresPerSecond(flows[i]))
                    .si();
            lower[i] = up.on(middle - half);
            upper[i] = up.on(middle + half);
        }
        return List.of(Area.between(flow.on(flows), lower, upper).labelled(label));
    }

    private List<Mark> points(Ruler up, ToDoubleFunction<TestPoint> value) {
        if (!asTested() || curve.points().isEmpty()) {
            return List.of();
        }
        List<TestPoint> points = curve.points();
        return List.of(Points.at(
                        flow.on(points.stream()
                                .mapToDouble(point -> point.flow().si())
                                .toArray()),
                        up.on(points.stream().mapToDouble(value).toArray()))
                .as(Symbol.RING)
                .labelled(up.equals(head) ? "test" : ""));
    }

    private boolean asTested() {
        return curve.liquid().equals(curve.testedLiquid())
                && Math.abs(curve.speed().over(curve.testedSpeed()).value() - 1) < ROUNDING;
    }

    private static double[] flows(double from, double to) {
        return IntStream.rangeClosed(0, STEPS)
                .mapToDouble(i -> i == STEPS ? to : from + (to - from) * i / STEPS)
                .toArray();
    }
}

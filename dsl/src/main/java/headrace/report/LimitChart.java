package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Reference;
import headrace.curve.PumpCurve;
import headrace.operation.limit.MinimumFlow;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.Overload;
import headrace.operation.limit.PumpLimits;
import headrace.operation.limit.ReachableRegion;
import headrace.pump.PumpSet;
import headrace.report.CurveLines.Span;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Head over flow at the least and the greatest speed, with the operating region shaded between them, and the shaft
 * power at the greatest speed beside what the motor gives.
 */
final class LimitChart {
    private static final int SPEEDS = 25;
    private static final int STEPS = 120;
    private static final double ROUNDING = 1e-9;

    private final PumpLimits limits;
    private final ReachableRegion reach;
    private final PumpCurve curve;
    private final Ruler flow = Ruler.of(Flow.KIND);
    private final Ruler head = Ruler.of(Head.KIND);
    private final Ruler power = Ruler.of(Power.KIND);
    private final double[] speeds;
    private final double[] best;

    private LimitChart(PumpLimits limits) {
        this.limits = limits;
        this.reach = limits.reach();
        this.curve = reach.set().curve();
        PumpSet set = reach.set();
        double slow = set.minimumSpeed().over(curve.speed()).value();
        double fast = set.maximumSpeed().over(curve.speed()).value();
        speeds = IntStream.range(0, SPEEDS)
                .mapToDouble(i -> i == SPEEDS - 1 ? fast : slow + (fast - slow) * i / (SPEEDS - 1))
                .toArray();
        best = Arrays.stream(speeds)
                .map(s ->
                        curve.atSpeed(Ratio.of(s)).bestEfficiencyPoint().flow().si())
                .toArray();
    }

    static Chart of(PumpLimits limits) {
        return new LimitChart(limits).chart();
    }

    private Chart chart() {
        OperatingRegion region = limits.region();
        List<Mark> heads = new ArrayList<>();
        if (speeds[0] < speeds[SPEEDS - 1]) {
            shaded(region.allowableFrom(), region.preferredFrom())
                    .map(area -> area.in(Ink.SKY).labelled("allowable" + (region.stated() ? "" : " (assumed)")))
                    .ifPresent(heads::add);
            shaded(region.preferredTo(), region.allowableTo())
                    .map(area -> area.in(Ink.SKY))
                    .ifPresent(heads::add);
            shaded(region.preferredFrom(), region.preferredTo())
                    .map(area -> area.in(Ink.GREEN).labelled("preferred"))
                    .ifPresent(heads::add);
            heads.addAll(headLine(reach.set().minimumSpeed()));
            heads.add(leastFlow());
        } else {
            heads.addAll(ends(region));
        }
        heads.addAll(headLine(reach.set().maximumSpeed()));
        reach.branchLimit()
                .ifPresent(limit ->
                        heads.add(Reference.standingAt(flow.on(limit.si()), "the branch lets " + limit + " pass")));
        Overload overload = limits.overload();
        List<Mark> powers = new ArrayList<>(powerLine());
        powers.add(Reference.atHeight(power.on(overload.available().si()), "the motor gives " + overload.available()));
        overload.from()
                .ifPresent(from -> powers.add(Reference.standingAt(flow.on(from.si()), "overload from " + from)
                        .in(Ink.VERMILION)));
        return Chart.titled("Limits of " + curve.name() + ", " + curve.liquid())
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head").from(0), heads)
                .panel(power.axis("Shaft power").from(0), powers)
                .caption("Shaft power at " + reach.set().maximumSpeed() + ".")
                .build();
    }

    /** With one speed the region is a stretch of the curve, shown by its ends. */
    private List<Mark> ends(OperatingRegion region) {
        List<Mark> marks = new ArrayList<>();
        double at = best[0];
        marks.add(Reference.standingAt(flow.on(at * region.allowableFrom().value()), "allowable from"));
        marks.add(Reference.standingAt(flow.on(at * region.preferredFrom().value()), "preferred from")
                .in(Ink.GREEN));
        marks.add(Reference.standingAt(flow.on(at * region.preferredTo().value()), "preferred to")
                .in(Ink.GREEN));
        marks.add(Reference.standingAt(flow.on(at * region.allowableTo().value()), "allowable to"));
        return marks;
    }

    /** Returns the part of the map between two shares of best-efficiency flow, as far as the curve reaches. */
    private Optional<Area> shaded(Ratio from, Ratio to) {
        int last = SPEEDS - 1;
        double low = Math.max(from.value(), curve.extendedLowestFlow().si() / bestAtOwnSpeed());
        double high = Math.min(to.value(), curve.extendedHighestFlow().si() / bestAtOwnSpeed());
        double left = low * best[0];
        double right = high * best[last];
        if (high <= low * (1 + ROUNDING)) {
            return Optional.empty();
        }
        double[] x = new double[STEPS + 1];
        double[] lower = new double[STEPS + 1];
        double[] upper = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            double q = left + (right - left) * i / STEPS;
            x[i] = flow.on(q);
            lower[i] = head.on(curve.headMetres(q, speedAt(q / high)));
            upper[i] = head.on(curve.headMetres(q, speedAt(low > 0 ? q / low : Double.MAX_VALUE)));
        }
        return Optional.of(Area.between(x, lower, upper));
    }

    private double bestAtOwnSpeed() {
        return curve.bestEfficiencyPoint().flow().si();
    }

    /** Returns the speed at which a flow is that of best efficiency, kept inside the range. */
    private double speedAt(double q) {
        int i = 1;
        while (i < SPEEDS - 1 && best[i] < q) {
            i++;
        }
        double share = (q - best[i - 1]) / (best[i] - best[i - 1]);
        double s = speeds[i - 1] + (speeds[i] - speeds[i - 1]) * share;
        return Math.min(Math.max(s, speeds[0]), speeds[SPEEDS - 1]);
    }

    private Mark leastFlow() {
        double[] x = new double[SPEEDS];
        double[] y = new double[SPEEDS];
        for (int i = 0; i < SPEEDS; i++) {
            PumpCurve at = curve.atSpeed(Ratio.of(speeds[i]));
            MinimumFlow least = MinimumFlow.of(at, limits.share(), limits.rise());
            double q = Math.max(least.flow().si(), at.extendedLowestFlow().si());
            x[i] = flow.on(q);
            y[i] = head.on(at.headMetres(q, 1));
        }
        return Line.through(x, y).in(Ink.VERMILION).broken(Dash.DASHED).labelled("least flow");
    }

    private List<Mark> headLine(Speed speed) {
        PumpCurve at = reach.curveAt(speed);
        return CurveLines.of(
                x -> head.on(at.headMetres(x * flow.unit().factor(), 1)),
                Span.of(at, flow),
                Ink.BLUE,
                speed.toString());
    }

    private List<Mark> powerLine() {
        PumpCurve at = reach.curveAt(reach.set().maximumSpeed());
        return CurveLines.of(
                x -> power.on(at.shaftWatts(x * flow.unit().factor(), 1)),
                Span.of(at, flow),
                Ink.PURPLE,
                "shaft power");
    }
}

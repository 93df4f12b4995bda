package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Symbol;
import headrace.circuit.SystemCurve;
import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.numeric.Contour;
import headrace.operation.OperatingPoint;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Head over flow at several speeds, the islands of efficiency, and what the circuit and the control ask for. */
final class SpeedMapChart {
    private static final List<Ink> LAW_INKS = List.of(Ink.VERMILION, Ink.PURPLE, Ink.BLACK);

    private static final int CURVE_STEPS = 4;
    private static final int EDGE_STEPS = 60;
    private static final double ROUND_RPM = 50;
    private static final double ROUNDING = 1e-9;

    private final SpeedMap map;
    private final PumpCurve curve;
    private final Ruler flow = Ruler.of(Flow.KIND);
    private final Ruler head = Ruler.of(Head.KIND);

    private SpeedMapChart(SpeedMap map) {
        this.map = map;
        this.curve = map.set().curve();
    }

    static Chart of(SpeedMap map) {
        return new SpeedMapChart(map).chart();
    }

    /** Returns what stands behind all that is drawn upon a map: islands, curves, the end of the tested range. */
    static List<Mark> behind(SpeedMap map) {
        return new SpeedMapChart(map).behind();
    }

    private List<Mark> behind() {
        List<Mark> marks = new ArrayList<>();
        marks.add(islands());
        for (Speed speed : speeds(map)) {
            marks.addAll(headCurve(speed));
        }
        endOfTest().ifPresent(marks::add);
        return marks;
    }

    private Chart chart() {
        List<Mark> marks = behind();
        for (SystemCurve system : map.systems()) {
            marks.add(systemCurve(system));
        }
        List<ControlLaw> drawn = map.laws().stream()
                .filter(law -> law.requiredHead(Flow.ZERO).isPresent())
                .toList();
        for (int i = 0; i < drawn.size(); i++) {
            marks.add(lawCurve(drawn.get(i)).in(LAW_INKS.get(i % LAW_INKS.size())));
        }
        points().ifPresent(marks::add);
        map.design().ifPresent(duty -> marks.add(design(duty)));
        return Chart.titled(curve.name() + " over speed")
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head").from(0), marks)
                .caption("Efficiency over speed: " + curve.efficiencyOverSpeed().name() + ".")
                .build();
    }

    /** Returns the speeds of the map: the greatest, the least, and round ones between. */
    static List<Speed> speeds(SpeedMap map) {
        Speed least = map.set().minimumSpeed();
        Speed most = map.set().maximumSpeed();
        if (least.compareTo(most) >= 0) {
            return List.of(most);
        }
        double top = most.toRevolutionsPerMinute();
        double step = (top - least.toRevolutionsPerMinute()) / CURVE_STEPS;
        double round = step > 4 * ROUND_RPM ? ROUND_RPM : 1;
        return IntStream.rangeClosed(0, CURVE_STEPS)
                .mapToObj(i -> Speed.revolutionsPerMinute(Math.rint((top - step * i) / round) * round))
                .map(speed -> speed.compareTo(most) > 0 ? most : speed)
                .map(speed -> speed.compareTo(least) < 0 ? least : speed)
                .collect(Collectors.collectingAndThen(Collectors.toList(), between -> ended(between, most, least)));
    }

    private static List<Speed> ended(List<Speed> speeds, Speed first, Speed last) {
        speeds.set(0, first);
        speeds.set(speeds.size() - 1, last);
        return speeds;
    }

    /** Returns where the tested range ends at every speed. */
    private Optional<Mark> endOfTest() {
        double slowest = map.set().minimumSpeed().over(curve.speed()).value();
        double fastest = map.set().maximumSpeed().over(curve.speed()).value();
        if (!(slowest < fastest)) {
            return Optional.empty();
        }
        double[] x = new double[EDGE_STEPS + 1];
        double[] y = new double[EDGE_STEPS + 1];
        for (int i = 0; i <= EDGE_STEPS; i++) {
            double s = i == EDGE_STEPS ? fastest : slowest + (fastest - slowest) * i / EDGE_STEPS;
            double end = curve.atSpeed(Ratio.of(s)).highestFlow().si();
            x[i] = flow.on(end);
            y[i] = head.on(curve.headMetres(end, s));
        }
        return Optional.of(Line.through(x, y).in(Ink.GREY).broken(Dash.DOTTED).labelled("end of the tested range"));
    }

    /** Returns the head over the tested range at a speed, and what the caller has added to it dashed. */
    private List<Mark> headCurve(Speed speed) {
        PumpCurve moved = curve.atSpeed(speed);
        double low = moved.lowestFlow().si();
        double high = moved.highestFlow().si();
        List<Mark> parts = new ArrayList<>(List.of(part(moved, low, high).labelled(speed.toString())));
        if (moved.extendedHighestFlow().si() > high * (1 + ROUNDING)) {
            parts.add(part(moved, high, moved.extendedHighestFlow().si()).extended(true));
        }
        if (moved.extendedLowestFlow().si() < low - ROUNDING * high) {
            parts.add(part(moved, moved.extendedLowestFlow().si(), low).extended(true));
        }
        return parts;
    }

    private Line part(PumpCurve moved, double from, double to) {
        return Line.of(q -> head.on(moved.headMetres(q * flow.unit().factor(), 1)), flow.on(from), flow.on(to));
    }

    private Mark islands() {
        ContourLines lines = ContourLines.of("pump efficiency");
        for (Contour contour : Islands.of(map.set(), Islands.levels(map.set()))) {
            int count = contour.size() + (contour.closed() ? 1 : 0);
            double[] x = IntStream.range(0, count)
                    .mapToDouble(i -> flow.on(contour.x(i % contour.size())))
                    .toArray();
            double[] y = IntStream.range(0, count)
                    .mapToDouble(i -> head.on(contour.y(i % contour.size())))
                    .toArray();
            lines = lines.with(x, y, Ratio.of(contour.level()).toString());
        }
        return lines;
    }

    private Mark systemCurve(SystemCurve system) {
        double s = map.set().maximumSpeed().over(curve.speed()).value();
        double end = reach(
                system,
                curve.highestFlow().si() * s,
                curve.headMetres(curve.lowestFlow().si() * s, s));
        return Line.of(q -> head.on(system.headMetres(q * flow.unit().factor())), 0, flow.on(end))
                .in(Ink.BLACK)
                .broken(Dash.DASH_DOT)
                .labelled("system curve");
    }

    /** Returns the flow at which the system curve leaves the map, to the right or at its top. */
    private static double reach(SystemCurve system, double flow, double head) {
        if (system.headMetres(flow) <= head) {
            return flow;
        }
        double low = 0;
        double high = flow;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (system.headMetres(middle) <= head) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private Line lawCurve(ControlLaw law) {
        Flow end = law.design().map(Duty::flow).orElse(curve.highestFlow());
        return Line.of(
                        q -> head.on(law.requiredHead(Flow.cubicMetresPerSecond(
                                        q * flow.unit().factor()))
                                .map(Head::si)
                                .orElse(0.0)),
                        0,
                        flow.on(end.si()))
                .labelled(law.name());
    }

    private Optional<Mark> points() {
        List<OperatingPoint> points = map.points();
        if (points.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Points.at(
                        flow.on(points.stream()
                                .mapToDouble(point -> point.flow().si())
                                .toArray()),
                        head.on(points.stream()
                                .mapToDouble(point -> point.head().si())
                                .toArray()))
                .as(Symbol.RING)
                .labelled(points.size() == 1 ? "operating point" : "operating points"));
    }

    private Mark design(Duty duty) {
        return Points.at(flow.on(duty.flow().si()), head.on(duty.head().si()))
                .as(Symbol.DIAMOND)
                .labelled("design " + duty);
    }
}

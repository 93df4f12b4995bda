package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Points;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.data.Column;
import headrace.data.Table;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** How a pump test shows itself: what was read, as a table and as points. */
final class PumpTestReport {
    private PumpTestReport() {}

    static Shown of(PumpTest test) {
        List<TestPoint> points = test.points();
        Flow least = points.stream().map(TestPoint::flow).min(Flow::compareTo).orElseThrow();
        Flow most = points.stream().map(TestPoint::flow).max(Flow::compareTo).orElseThrow();
        Optional<Integer> poles = test.poles().stream().boxed().findFirst();
        return Composed.titled("Pump test of " + test.name())
                .line(points.size() + " points from " + least + " to " + most + " at " + test.speed() + ", with "
                        + test.liquid() + ".")
                .fact("impeller diameter", test.impellerDiameter())
                .fact("motor poles", poles)
                .fact("source", test.source())
                .fact("date", test.date())
                .table(table(test))
                .chart(chart(test))
                .shown(test);
    }

    private static Table table(PumpTest test) {
        return Table.of(
                        "Points of the test of " + test.name(),
                        Column.of("flow", Flow.KIND),
                        Column.of("head", Head.KIND),
                        Column.of("shaft power", Power.KIND),
                        Column.of("speed", Speed.KIND),
                        Column.of("efficiency", Ratio.KIND))
                .rows(test.points().stream().map(point -> row(test, point)).toList());
    }

    private static Object[] row(PumpTest test, TestPoint point) {
        return new Object[] {
            point.flow(), point.head(), point.shaftPower(), point.speed(), point.efficiencyIn(test.liquid())
        };
    }

    private static Chart chart(PumpTest test) {
        return Chart.titled("Test of " + test.name() + ", points as read")
                .across(Ruler.of(Flow.KIND).axis("Flow").from(0))
                .panel(
                        Ruler.of(Head.KIND).axis("Head"),
                        points(test, Ruler.of(Head.KIND), point -> point.head().si()))
                .panel(
                        Ruler.of(Power.KIND).axis("Shaft power"),
                        points(
                                test,
                                Ruler.of(Power.KIND),
                                point -> point.shaftPower().si()))
                .build();
    }

    private static Points points(PumpTest test, Ruler up, ToDoubleFunction<TestPoint> value) {
        Ruler flow = Ruler.of(Flow.KIND);
        return Points.at(
                flow.on(test.points().stream()
                        .mapToDouble(point -> point.flow().si())
                        .toArray()),
                up.on(test.points().stream().mapToDouble(value).toArray()));
    }
}

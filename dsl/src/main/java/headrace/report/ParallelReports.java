package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Symbol;
import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.data.Column;
import headrace.data.Table;
import headrace.operation.ParallelOperation;
import headrace.operation.SeriesOperation;
import headrace.pump.BranchFlow;
import headrace.pump.ParallelPoint;
import headrace.pump.PumpBranch;
import headrace.pump.SeriesPoint;
import headrace.report.CurveLines.Span;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;

/** How several pumps together show themselves: each, all of them, and the system. */
final class ParallelReports {
    private static final int STEPS = 160;
    private static final double ROUNDING = 1e-9;

    private ParallelReports() {}

    static Shown branch(PumpBranch branch) {
        return Composed.titled("Pump branch " + branch)
                .fact("pump", branch.curve())
                .fact("cracking head of the check valve", branch.crackingHead())
                .fact("loss at best efficiency", loss(branch))
                .shown(branch.curve());
    }

    private static Head loss(PumpBranch branch) {
        double q = branch.curve().bestEfficiencyPoint().flow().si();
        return Head.metres(branch.lossMetresPerSquaredFlow() * q * q);
    }

    static Shown parallel(ParallelOperation operation) {
        ParallelPoint point = operation.point();
        return Composed.titled("Pumps in parallel: " + point.flow() + " at " + point.head())
                .line("The shafts take " + point.shaftPower() + " together, without pumps behind a closed valve.")
                .chart(chart(operation))
                .table(table(point))
                .shown(operation, Caution.ESTIMATE);
    }

    private static Table table(ParallelPoint point) {
        Table table = Table.of(
                "Pumps",
                Column.text("pump"),
                Column.text("check valve"),
                Column.of("flow", Flow.KIND),
                Column.of("pump head", Head.KIND),
                Column.of("speed", Speed.KIND),
                Column.of("efficiency", Ratio.KIND),
                Column.of("shaft power", Power.KIND));
        List<Object[]> rows = new ArrayList<>();
        for (BranchFlow branch : point.branches()) {
            CurvePoint at = branch.point().orElse(null);
            rows.add(new Object[] {
                branch.branch().name() + (branch.branch().running() ? "" : " (standing still)"),
                branch.valve() == BranchFlow.CheckValve.OPEN ? "open" : "closed",
                branch.flow(),
                at == null ? null : at.head(),
                branch.branch().running() ? branch.branch().curve().speed() : null,
                at == null ? null : at.efficiency(),
                at == null ? null : at.shaftPower()
            });
        }
        return table.rows(rows);
    }

    /** Pumps of one name that turn at different speeds are told apart by these. */
    private static String named(PumpBranch own, ParallelPoint point) {
        boolean alone = point.branches().stream()
                .map(BranchFlow::branch)
                .filter(other -> other.running() && other.name().equals(own.name()))
                .allMatch(other -> other.toString().equals(own.toString()));
        return alone ? own.name() : own.toString();
    }

    private static Chart chart(ParallelOperation operation) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        ParallelPoint point = operation.point();
        List<Mark> marks = new ArrayList<>();
        List<String> drawn = new ArrayList<>();
        for (BranchFlow branch : point.branches()) {
            PumpBranch own = branch.branch();
            if (own.running() && !drawn.contains(own.toString())) {
                drawn.add(own.toString());
                marks.addAll(CurveLines.of(
                        x -> head.on(own.headerMetres(x * flow.unit().factor())),
                        Span.of(own.curve(), flow),
                        Ink.GREY,
                        named(own, point)));
                branch.point()
                        .ifPresent(at -> marks.add(Points.at(
                                        flow.on(at.flow().si()),
                                        head.on(point.head().si()))
                                .as(Symbol.RING)
                                .in(Ink.GREY)));
            }
        }
        marks.addAll(combined(operation, flow, head));
        marks.add(system(operation, flow, head));
        if (!point.others().isEmpty()) {
            marks.add(others(point, flow, head));
        }
        marks.add(Points.at(flow.on(point.flow().si()), head.on(point.head().si()))
                .as(Symbol.DIAMOND)
                .labelled("operating point " + point.flow() + " at " + point.head()));
        return Chart.titled("Pumps in parallel, heads between the headers")
                .across(flow.axis("Flow").from(0))
                .panel(point.others().isEmpty() ? head.axis("Head").from(0) : head.axis("Head"), marks)
                .build();
    }

    /** Returns what all together give, head by head; dashed where one of them is beyond its test. */
    private static List<Mark> combined(ParallelOperation operation, Ruler flow, Ruler head) {
        double low = operation.pumps().leastHead().metres();
        double high = operation.pumps().greatestHead().metres();
        List<Mark> lines = new ArrayList<>();
        int from = 0;
        for (int i = 1; low < high && i <= STEPS; i++) {
            boolean tested = operation.pumps().testedAt(high - (high - low) * (i - 0.5) / STEPS);
            boolean goesOn = i < STEPS && tested == operation.pumps().testedAt(high - (high - low) * (i + 0.5) / STEPS);
            if (!goesOn) {
                double[] x = new double[i - from + 1];
                double[] y = new double[i - from + 1];
                for (int j = from; j <= i; j++) {
                    double metres = high - (high - low) * j / STEPS;
                    x[j - from] = flow.on(operation.pumps().totalFlowAt(metres));
                    y[j - from] = head.on(metres);
                }
                Line line = Line.through(x, y).in(Ink.BLUE).extended(!tested);
                lines.add(from == 0 ? line.labelled("all together") : line);
                from = i;
            }
        }
        return lines;
    }

    private static Mark system(ParallelOperation operation, Ruler flow, Ruler head) {
        double most = operation.pumps().greatestHead().metres();
        double end = 1.15 * Math.max(operation.point().flow().si(), ROUNDING);
        while (operation.system().headMetres(end) > most
                && end > operation.point().flow().si()) {
            end *= 0.98;
        }
        return Line.of(
                        q -> head.on(
                                operation.system().headMetres(q * flow.unit().factor())),
                        0,
                        flow.on(Math.max(end, operation.point().flow().si() * (1 + ROUNDING))))
                .in(Ink.BLACK)
                .broken(Dash.DASH_DOT)
                .labelled("system curve");
    }

    private static Mark others(ParallelPoint point, Ruler flow, Ruler head) {
        return Points.at(
                        flow.on(point.others().stream()
                                .mapToDouble(other -> other.flow().si())
                                .toArray()),
                        head.on(point.others().stream()
                                .mapToDouble(other -> other.head().si())
                                .toArray()))
                .as(Symbol.RING)
                .in(Ink.VERMILION)
                .labelled("other points");
    }

    static Shown series(SeriesOperation operation) {
        SeriesPoint point = operation.point();
        List<Object[]> rows = new ArrayList<>();
        for (int i = 0; i < point.points().size(); i++) {
            CurvePoint at = point.points().get(i);
            rows.add(new Object[] {
                operation.pumps().curves().get(i).name(), at.head(), at.speed(), at.efficiency(), at.shaftPower()
            });
        }
        return Composed.titled("Pumps in series: " + point.flow() + " at " + point.head())
                .line("The shafts take " + point.shaftPower() + " together.")
                .chart(seriesChart(operation))
                .table(Table.of(
                                "Pumps",
                                Column.text("pump"),
                                Column.of("head", Head.KIND),
                                Column.of("speed", Speed.KIND),
                                Column.of("efficiency", Ratio.KIND),
                                Column.of("shaft power", Power.KIND))
                        .rows(rows))
                .shown(operation, Caution.ESTIMATE, Caution.OVERSPEED);
    }

    private static Chart seriesChart(SeriesOperation operation) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        double factor = flow.unit().factor();
        List<Mark> marks = new ArrayList<>();
        List<String> drawn = new ArrayList<>();
        Span all = operation.pumps().curves().stream()
                .map(curve -> Span.of(curve, flow))
                .reduce(Span::with)
                .orElseThrow();
        for (PumpCurve curve : operation.pumps().curves()) {
            String label = curve.name() + " at " + curve.speed();
            if (!drawn.contains(label)) {
                drawn.add(label);
                marks.addAll(CurveLines.of(q -> head.on(curve.headMetres(q * factor, 1)), all, Ink.GREY, label));
            }
        }
        marks.addAll(
                CurveLines.of(q -> head.on(operation.pumps().headMetres(q * factor)), all, Ink.BLUE, "all together"));
        double end = 1.1 * flow.on(operation.point().flow().si());
        marks.add(Line.of(q -> head.on(operation.system().headMetres(q * factor)), 0, Math.min(end, all.most()))
                .in(Ink.BLACK)
                .broken(Dash.DASH_DOT)
                .labelled("system curve"));
        marks.add(Points.at(
                        flow.on(operation.point().flow().si()),
                        head.on(operation.point().head().si()))
                .as(Symbol.DIAMOND)
                .labelled("operating point"));
        return Chart.titled("Pumps in series")
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head").from(0), marks)
                .build();
    }
}

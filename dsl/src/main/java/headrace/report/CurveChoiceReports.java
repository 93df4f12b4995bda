package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.curve.CurvePoint;
import headrace.curve.ImpellerSizing;
import headrace.curve.PumpCurve;
import headrace.curve.SpeedCollapse;
import headrace.curve.TrimComparison;
import headrace.data.Column;
import headrace.data.Table;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;

/** How curves by several rules, and readings at several speeds, show themselves side by side. */
final class CurveChoiceReports {
    private static final List<Ink> INKS = List.of(Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.PURPLE, Ink.BLACK);

    private CurveChoiceReports() {}

    static Shown trims(TrimComparison comparison) {
        return Composed.titled("Trim to " + comparison.diameter() + " by "
                        + comparison.results().size() + " rules")
                .line("At the flow of best efficiency the heads differ by " + comparison.disagreement()
                        + " of the greatest: cut in steps, and test between them.")
                .table(trimTable(comparison))
                .chart(trimChart(comparison))
                .shown(comparison, Caution.ESTIMATE);
    }

    private static Table trimTable(TrimComparison comparison) {
        return Table.of(
                        "Best efficiency after the trim, by rule",
                        Column.text("rule"),
                        Column.of("flow", Flow.KIND),
                        Column.of("head", Head.KIND),
                        Column.of("shaft power", Power.KIND),
                        Column.of("efficiency", Ratio.KIND))
                .rows(comparison.results().stream()
                        .map(result -> {
                            CurvePoint best = result.curve().bestEfficiencyPoint();
                            return new Object[] {
                                result.rule(), best.flow(), best.head(), best.shaftPower(), best.efficiency()
                            };
                        })
                        .toList());
    }

    private static Chart trimChart(TrimComparison comparison) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < comparison.results().size(); i++) {
            TrimComparison.Result result = comparison.results().get(i);
            PumpCurve curve = result.curve();
            lines.add(Line.of(
                            q -> head.on(curve.headMetres(q * flow.unit().factor(), 1)),
                            flow.on(curve.lowestFlow().si()),
                            flow.on(curve.highestFlow().si()))
                    .in(INKS.get(i % INKS.size()))
                    .labelled(result.rule()));
        }
        return Chart.titled("Head after the trim to " + comparison.diameter() + ", by rule")
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head"), lines)
                .build();
    }

    /** Returns impellers sized to several aims side by side; where none does it, a line says why. */
    static Shown sized(List<ImpellerSizing.Sized> impellers) {
        String title = "Impeller sized to " + (impellers.size() == 1 ? "one aim" : impellers.size() + " aims");
        Composed composed = Composed.titled(title);
        impellers.forEach(each -> each.refusal().ifPresent(why -> composed.line(why.getMessage())));
        Table table = Table.of(
                        title,
                        Column.text("aim"),
                        Column.in("diameter", UnitSystem.current() == UnitSystem.METRIC ? "mm" : "in"),
                        Column.of("best flow", Flow.KIND),
                        Column.of("head there", Head.KIND),
                        Column.of("efficiency", Ratio.KIND),
                        Column.of("greatest shaft power", Power.KIND))
                .rows(impellers.stream().map(CurveChoiceReports::row).toList());
        List<PumpCurve> curves =
                impellers.stream().flatMap(each -> each.curve().stream()).toList();
        Notes notes = curves.stream().map(PumpCurve::notes).reduce(Notes.NONE, Notes::and);
        Basis basis = curves.stream().map(PumpCurve::basis).reduce(Basis.NONE, Basis::and);
        return composed.table(table).shown(notes, basis, Caution.ESTIMATE);
    }

    private static Object[] row(ImpellerSizing.Sized sized) {
        return sized.curve()
                .map(curve -> {
                    CurvePoint best = curve.bestEfficiencyPoint();
                    return new Object[] {
                        sized.aim(),
                        curve.impellerDiameter().orElse(null),
                        best.flow(),
                        best.head(),
                        best.efficiency(),
                        curve.greatestPower()
                    };
                })
                .orElse(new Object[] {sized.aim(), null, null, null, null, null});
    }

    static Shown speeds(SpeedCollapse collapse) {
        boolean similar = collapse.groups().stream().allMatch(SpeedCollapse.Group::similar);
        return Composed.titled("Readings of " + collapse.curve().name() + " at "
                        + (collapse.groups().size() == 1
                                ? "one speed"
                                : collapse.groups().size() + " speeds"))
                .line(
                        similar
                                ? "The affinity laws bring the readings at every speed onto one curve."
                                : "The affinity laws do not bring the readings at every speed onto one curve: take the"
                                        + " measured efficiency over speed.")
                .table(Table.of(
                                "Against the curve near " + collapse.curve().testedSpeed(),
                                Column.of("speed", Speed.KIND),
                                Column.number("points"),
                                Column.of("scatter of head", Ratio.KIND),
                                Column.of("scatter of power", Ratio.KIND),
                                Column.of("efficiency left", Ratio.KIND),
                                Column.text("similar"))
                        .rows(collapse.groups().stream()
                                .map(group -> new Object[] {
                                    group.speed(),
                                    group.points(),
                                    group.headScatter(),
                                    group.powerScatter(),
                                    group.efficiencyShare(),
                                    group.similar() ? "yes" : "no"
                                })
                                .toList()))
                .shown(collapse.curve());
    }
}

package headrace.report.circuit;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.load.LoadPattern;
import headrace.report.Composed;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.units.Flow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** How load patterns show themselves: what each branch is asked for. */
public final class PatternReports {
    /** A table with more columns is not read. */
    private static final int MOST_BRANCHES = 8;

    private PatternReports() {}

    /** Shows a pattern. */
    public static Shown pattern(LoadPattern pattern) {
        Map<String, Flow> flows = pattern.demands().flows();
        Table table = Table.of("Demands", Column.text("branch"), Column.of("flow", Flow.KIND))
                .rows(flows.entrySet().stream()
                        .map(each -> new Object[] {each.getKey(), each.getValue()})
                        .toList());
        Ruler flow = Ruler.of(Flow.KIND);
        Composed shown = Composed.titled("Load pattern: " + pattern).table(table);
        if (!flows.isEmpty()) {
            shown.chart(Chart.titled("What each branch is asked for")
                    .across(flow.axis("Flow").from(0))
                    .bars(Bars.of(List.copyOf(flows.keySet()))
                            .with(
                                    "",
                                    Ink.SKY,
                                    flows.values().stream()
                                            .map(each -> flow.on(each.si()))
                                            .toList()))
                    .build());
        }
        return shown.shown();
    }

    /** Shows patterns, a row each. */
    public static Shown patterns(List<LoadPattern> patterns) {
        List<String> branches = patterns.stream()
                .flatMap(pattern -> pattern.demands().flows().keySet().stream())
                .distinct()
                .toList();
        List<Column> columns = new ArrayList<>(List.of(
                Column.text("pattern"), Column.of("total flow", Flow.KIND), Column.number("branches without demand")));
        boolean each = branches.size() <= MOST_BRANCHES;
        if (each) {
            branches.forEach(name -> columns.add(Column.of(name, Flow.KIND)));
        }
        List<Object[]> rows = new ArrayList<>();
        for (LoadPattern pattern : patterns) {
            Map<String, Flow> flows = pattern.demands().flows();
            List<Object> row =
                    new ArrayList<>(List.of(pattern.name(), pattern.demands().total(), (int) flows.values().stream()
                            .filter(flow -> flow.si() == 0)
                            .count()));
            if (each) {
                branches.forEach(name -> row.add(flows.getOrDefault(name, Flow.ZERO)));
            }
            rows.add(row.toArray());
        }
        return Composed.titled("Load patterns")
                .table(Table.of("Load patterns", columns.toArray(Column[]::new)).rows(rows))
                .shown();
    }
}

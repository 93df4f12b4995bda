package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * How a load profile shows itself: its hours, flow by flow, or in steps of flow where it has more than a page holds.
 */
final class LoadProfileReport {
    private static final int MOST_BINS = 30;
    private static final int STEP_PERCENT = 5;

    /**
     * A row of the table and a bar of the chart.
     *
     * @param flow the flow, or from which to which
     * @param time for how long
     */
    private record Row(String flow, Time time) {}

    private LoadProfileReport() {}

    static Shown of(LoadProfile profile) {
        Composed composed = Composed.titled("Load profile: " + profile.name())
                .line(profile.pumpingHours() + " with flow out of " + profile.hours() + " in the profile; "
                        + profile.meanFlowFraction() + " of design flow on average while pumping.");
        boolean stepped = profile.bins().size() > MOST_BINS;
        List<Row> rows = stepped ? steps(profile) : bins(profile);
        if (stepped) {
            composed.line("Its " + profile.bins().size() + " flows are shown in steps of " + STEP_PERCENT
                    + " %; every calculation takes them as they are.");
        }
        return composed.table(stepped ? stepTable(rows) : binTable(profile))
                .chart(chart(profile, rows))
                .shown(profile);
    }

    private static List<Row> bins(LoadProfile profile) {
        return profile.bins().stream()
                .map(bin -> new Row(bin.flowFraction().toString(), bin.hours()))
                .toList();
    }

    private static List<Row> steps(LoadProfile profile) {
        return profile.bins().stream()
                .collect(Collectors.groupingBy(LoadProfileReport::step, TreeMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .sorted(Comparator.comparing(entry -> entry.getKey()))
                .map(entry -> new Row(
                        entry.getKey() + " to " + (entry.getKey() + STEP_PERCENT) + " %",
                        entry.getValue().stream().map(LoadBin::hours).reduce(Time.ZERO, Time::plus)))
                .toList();
    }

    private static int step(LoadBin bin) {
        return (int) Math.floor(bin.flowFraction().toPercent() / STEP_PERCENT) * STEP_PERCENT;
    }

    private static Table binTable(LoadProfile profile) {
        return Table.of("Time at each flow", Column.of("flow", Ratio.KIND), Column.of("time", Time.KIND))
                .rows(profile.bins().stream()
                        .map(bin -> new Object[] {bin.flowFraction(), bin.hours()})
                        .toList());
    }

    private static Table stepTable(List<Row> rows) {
        return Table.of("Time at each flow", Column.text("flow"), Column.of("time", Time.KIND))
                .rows(rows.stream()
                        .map(row -> new Object[] {row.flow(), row.time()})
                        .toList());
    }

    private static Chart chart(LoadProfile profile, List<Row> rows) {
        Ruler time = Ruler.of(Time.KIND);
        Bars bars = Bars.of(rows.stream().map(Row::flow).toList())
                .with(
                        "",
                        Ink.SKY,
                        rows.stream().map(row -> time.on(row.time().si())).toList());
        return Chart.titled(profile.name() + ": time at each share of design flow")
                .across(time.axis("Time").from(0))
                .bars(bars)
                .build();
    }
}

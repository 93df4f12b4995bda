package headrace.report;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Points;
import headrace.chart.mark.Symbol;
import headrace.data.Column;
import headrace.data.Table;
import headrace.trend.Change;
import headrace.trend.Channel;
import headrace.trend.LoggedLoad;
import headrace.trend.MeasuredSaving;
import headrace.trend.PowerBaseline;
import headrace.trend.TrendLog;
import headrace.trend.YearLoad;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.units.Unit;
import headrace.units.UnitSystem;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** How a trend log and what is made of it show themselves. */
final class TrendReports {
    private static final int MOST_CHANGES = 25;
    private static final int CELL_PERCENT = 5;
    private static final double SECONDS_OF_DAY = 86_400;
    private static final int MOST_SPANS = 400;
    private static final String METERS = "Meters and their placing decide: see to it that the power is that of the"
            + " drive's input and the flow that of this pump alone";

    private TrendReports() {}

    static Shown log(TrendLog log) {
        Composed composed = Composed.titled("Trend log: " + log.name())
                .line(log.count() + " rows" + (log.isClean() ? ", cleaned" : " as read, not cleaned") + ", from "
                        + log.clock(log.start()) + " to " + log.clock(log.end()) + ", mostly "
                        + Numbers.print(log.interval().toMinutes()) + " min apart.")
                .line(
                        log.changes().isEmpty()
                                ? "Nothing was changed."
                                : log.changes().size() + (log.changes().size() == 1 ? " entry" : " entries")
                                        + " in the list of changes.")
                .table(channels(log));
        overTime(log).ifPresent(composed::chart);
        if (!log.changes().isEmpty()) {
            composed.table(kinds(log)).table(changes(log, MOST_CHANGES));
        }
        return composed.shown(log);
    }

    /** Returns the readings over time; of a long log the mean of each span, so that the chart can be read. */
    private static Optional<Chart> overTime(TrendLog log) {
        long[] seconds = log.seconds();
        if (log.count() < 2 || log.channels().isEmpty()) {
            return Optional.empty();
        }
        double days = Math.max(1, seconds[log.count() - 1] - seconds[0]) / SECONDS_OF_DAY;
        double span = Math.max(days / MOST_SPANS, log.interval().seconds() / SECONDS_OF_DAY);
        Chart.Draft draft = Chart.titled(log.name() + " over time")
                .across(Axis.of("Time since " + log.clock(log.start()), "days").from(0));
        for (Channel channel : log.channels()) {
            Unit unit = UnitSystem.current().unitOf(channel.kind());
            draft.panel(
                    Axis.of(PlainReports.capital(channel.words()), unit.symbol()),
                    means(log, log.values(channel), unit, span));
        }
        return Optional.of(
                draft.caption("Nothing is drawn where a reading is missing.").build());
    }

    /** Returns one line for each stretch without a gap. */
    private static List<Line> means(TrendLog log, double[] values, Unit unit, double span) {
        long[] seconds = log.seconds();
        List<Line> lines = new ArrayList<>();
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        int row = 0;
        for (double end = span; row < log.count(); end += span) {
            double sum = 0;
            int there = 0;
            for (; row < log.count() && (seconds[row] - seconds[0]) / SECONDS_OF_DAY < end; row++) {
                if (!Double.isNaN(values[row])) {
                    sum += values[row];
                    there++;
                }
            }
            if (there > 0) {
                x.add(end - span / 2);
                y.add(unit.fromSi(sum / there));
            }
            if ((there == 0 || row == log.count()) && !x.isEmpty()) {
                lines.add(Line.through(array(x), array(y)).in(Ink.BLUE));
                x.clear();
                y.clear();
            }
        }
        return lines;
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static Table channels(TrendLog log) {
        Table table = Table.of(
                "Readings",
                Column.text("reading"),
                Column.text("least"),
                Column.text("mean"),
                Column.text("greatest"),
                Column.number("missing"));
        for (Channel channel : log.channels()) {
            Work.poll();
            double[] all = log.values(channel);
            double[] there = Arrays.stream(all).filter(v -> !Double.isNaN(v)).toArray();
            if (there.length == 0) {
                table = table.row(channel.words(), null, null, null, all.length);
                continue;
            }
            table = table.row(
                    channel.words(),
                    channel.print(Arrays.stream(there).min().orElseThrow()),
                    channel.print(Arrays.stream(there).average().orElseThrow()),
                    channel.print(Arrays.stream(there).max().orElseThrow()),
                    all.length - there.length);
        }
        return table;
    }

    private static Table kinds(TrendLog log) {
        Table table = Table.of(
                "Changes by kind", Column.text("what was done"), Column.number("times"), Column.number("rows"));
        for (Change.Kind kind : Change.Kind.values()) {
            if (log.times(kind) > 0) {
                table = table.row(kind.words(), log.times(kind), log.rows(kind));
            }
        }
        return table;
    }

    /** Returns the changes one by one, or as many as a page holds. */
    static Table changes(TrendLog log, int most) {
        List<Change> all = log.changes();
        String title = all.size() <= most
                ? "Each change"
                : "The first " + most + " of " + all.size() + " changes; changes(log) lists them all";
        List<Object[]> rows = new ArrayList<>();
        for (Change change : all.subList(0, Math.min(most, all.size()))) {
            int column = change.from().column();
            rows.add(new Object[] {
                change.from().line(),
                change.lastLine(),
                column == 0 ? null : column,
                change.rows(),
                change.kind().words(),
                change.about()
            });
        }
        return Table.of(
                        title,
                        Column.number("from line"),
                        Column.number("to line"),
                        Column.number("column"),
                        Column.number("rows"),
                        Column.text("what was done"),
                        Column.text("about"))
                .rows(rows);
    }

    static Shown load(LoggedLoad load) {
        return Composed.titled("Load of " + load.log().name())
                .line(load.mean() + " of the design flow of " + load.design() + " on average over "
                        + load.log().covered() + ".")
                .fact("energy in these hours", load.energy())
                .chart(loadChart(load))
                .table(Table.of(
                                "Twenty bins of equally many rows",
                                Column.of("from", Ratio.KIND),
                                Column.of("to", Ratio.KIND),
                                Column.number("rows"),
                                Column.of("mean load", Ratio.KIND),
                                Column.of("mean power", Power.KIND))
                        .rows(load.bins().stream()
                                .map(bin -> new Object[] {bin.from(), bin.to(), bin.rows(), bin.load(), bin.power()})
                                .toList()))
                .shown(load);
    }

    private static Chart loadChart(LoggedLoad load) {
        List<Time> times = load.times();
        Ruler ruler = Ruler.of(Time.KIND);
        return Chart.titled(load.log().name() + ": time at each share of design flow")
                .across(ruler.axis("Time").from(0))
                .bars(Bars.of(IntStream.range(0, times.size())
                                .mapToObj(i -> i * CELL_PERCENT + " to " + (i + 1) * CELL_PERCENT + " %")
                                .toList())
                        .with(
                                "",
                                Ink.SKY,
                                times.stream().map(time -> ruler.on(time.si())).toList()))
                .build();
    }

    static Shown year(YearLoad year) {
        List<YearLoad.Cell> cells =
                year.cells().stream().filter(cell -> cell.high().seconds() > 0).toList();
        return Composed.titled("Load of a year, from " + year.log().name())
                .line(year.mean() + " of design flow on average while running; 95 % band " + year.lowMean() + " to "
                        + year.highMean() + ".")
                .chart(yearChart(year))
                .table(Table.of(
                                "Hours of the year, with their 95 % band",
                                Column.of("load", Ratio.KIND),
                                Column.of("hours", Time.KIND),
                                Column.of("from", Time.KIND),
                                Column.of("to", Time.KIND))
                        .rows(cells.stream()
                                .map(cell -> new Object[] {cell.load(), cell.hours(), cell.low(), cell.high()})
                                .toList()))
                .shown(year, Caution.ESTIMATE);
    }

    private static Chart yearChart(YearLoad year) {
        Ruler load = Ruler.of(Ratio.KIND);
        Ruler time = Ruler.of(Time.KIND);
        double[] x =
                load.on(year.cells().stream().mapToDouble(c -> c.load().si()).toArray());
        double[] best =
                time.on(year.cells().stream().mapToDouble(c -> c.hours().si()).toArray());
        double[] low =
                time.on(year.cells().stream().mapToDouble(c -> c.low().si()).toArray());
        double[] high =
                time.on(year.cells().stream().mapToDouble(c -> c.high().si()).toArray());
        return Chart.titled("Hours of a year in each 5 % of design flow")
                .across(load.axis("Flow as a share of design flow").from(0))
                .panel(
                        time.axis("Time").from(0),
                        Area.between(x, low, high).labelled("95 % band"),
                        Line.through(x, best).labelled("extended from the log"))
                .caption("The band is drawn from the days of the log, and knows nothing of days it does not have.")
                .build();
    }

    static Shown baseline(PowerBaseline baseline) {
        return Composed.titled("Baseline of the power: " + baseline.log().name())
                .line(baseline.words() + ".")
                .fact("CV(RMSE)", baseline.quality().cvRmse())
                .fact("NMBE", baseline.quality().nmbe())
                .fact("hours", baseline.quality().readings())
                .fact("correlation from hour to hour", Numbers.print(baseline.correlation()))
                .fact("hours that count as independent", Numbers.print(baseline.independentHours()))
                .chart(hours(baseline))
                .shown(baseline);
    }

    /** Returns the hours of the baseline: on the line, what was measured is what the baseline gives. */
    private static Chart hours(PowerBaseline baseline) {
        Ruler power = Ruler.of(Power.KIND);
        PowerBaseline.Compared all = baseline.compared(baseline.log());
        int step = 1 + (all.measured().length - 1) / MOST_SPANS;
        int[] at = IntStream.range(0, all.measured().length)
                .filter(i -> i % step == 0)
                .toArray();
        double[] expected =
                Arrays.stream(at).mapToDouble(i -> power.on(all.expected()[i])).toArray();
        double[] measured =
                Arrays.stream(at).mapToDouble(i -> power.on(all.measured()[i])).toArray();
        double[] ends = {
            Arrays.stream(expected).min().orElseThrow(),
            Arrays.stream(expected).max().orElseThrow()
        };
        return Chart.titled("Power measured over that of the baseline, hour by hour")
                .across(power.axis("Power of the baseline"))
                .panel(
                        power.axis("Power measured"),
                        Points.at(expected, measured)
                                .as(Symbol.PLUS)
                                .in(Ink.GREY)
                                .labelled("an hour"),
                        Line.through(ends, ends).in(Ink.BLUE).labelled("as the baseline says"))
                .build();
    }

    static Shown saving(MeasuredSaving saving) {
        return Composed.titled("Saving in " + saving.after().name())
                .line(saving.saved() + " ± " + saving.uncertainty() + " at " + saving.confidence() + " confidence: "
                        + saving.share() + " ± " + saving.shareUncertainty() + " of what the baseline has.")
                .line("Measured by " + saving.option() + ".")
                .fact("baseline for these hours", saving.expected())
                .fact("taken in these hours", saving.measured())
                .chart(savingChart(saving))
                .shown(saving, Caution.ESTIMATE, METERS);
    }

    private static Chart savingChart(MeasuredSaving saving) {
        Axis axis = Axis.of("Energy", "kWh").from(0);
        return Chart.titled("Energy against the baseline")
                .across(axis)
                .bars(Bars.of(List.of("baseline", "taken"))
                        .with(
                                "",
                                Ink.SKY,
                                List.of(
                                        saving.expected().toKilowattHours(),
                                        saving.measured().toKilowattHours())))
                .build();
    }
}

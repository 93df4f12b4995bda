package headrace.report;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.LoadProfile;
import headrace.energy.load.BranchYear;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.HourlyWeather;
import headrace.energy.load.LoadToFlow;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Time;
import headrace.units.Unit;
import headrace.units.UnitSystem;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/** How the hours of a year show themselves: sorted from the greatest to the least, and by month. */
final class YearReports {
    private static final List<String> MONTHS =
            List.of("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec");
    private static final List<Ink> INKS =
            List.of(Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.PURPLE, Ink.BLACK, Ink.SKY, Ink.GREY);
    private static final List<Dash> DASHES = List.of(Dash.SOLID, Dash.DASH_DOT, Dash.DOTTED);

    /** A sorted year is drawn through so many points: more are finer than a page. */
    private static final int POINTS = 400;

    private static final double SHARES = 100;

    private YearReports() {}

    static Shown load(HourlyLoad load) {
        return Composed.titled("Load of a year: " + load.name())
                .line(load.hours() + " hours from " + load.clockAt(0) + ".")
                .fact("mean load", load.mean())
                .fact("greatest load", load.greatest())
                .fact("hours with load", load.loaded())
                .chart(sorted(
                        load.name() + ": hours at or above each load",
                        Axis.of("Load", "%").from(0),
                        List.of(duration(load.hours(), hour -> SHARES * load.shareAt(hour))
                                .in(Ink.BLUE))))
                .chart(monthly(load))
                .shown(load);
    }

    private static Chart sorted(String title, Axis up, List<Mark> lines) {
        return Chart.titled(title)
                .across(Axis.of("Hours", "h").from(0))
                .panel(up, lines)
                .build();
    }

    /** Returns the values of all hours, the greatest first, over how many hours they are reached. */
    private static Line duration(int hours, IntToDoubleFunction value) {
        double[] all = IntStream.range(0, hours).mapToDouble(value).toArray();
        Arrays.sort(all);
        double[] x = new double[POINTS + 1];
        double[] y = new double[POINTS + 1];
        for (int i = 0; i <= POINTS; i++) {
            int rank = (int) Math.round((hours - 1.0) * i / POINTS);
            x[i] = i == 0 ? 0 : rank + 1;
            y[i] = all[hours - 1 - rank];
        }
        return Line.through(x, y);
    }

    private static Chart monthly(HourlyLoad load) {
        double[] sums = new double[MONTHS.size()];
        int[] hours = new int[sums.length];
        LocalDateTime start = load.start();
        for (int hour = 0; hour < load.hours(); hour++) {
            int month = start.plusHours(hour).getMonthValue() - 1;
            sums[month] += SHARES * load.shareAt(hour);
            hours[month]++;
        }
        List<Double> means = IntStream.range(0, sums.length)
                .mapToObj(month -> sums[month] / hours[month])
                .toList();
        return Chart.titled(load.name() + ": mean load of each month")
                .across(Axis.of("Load", "%").from(0))
                .bars(Bars.of(MONTHS).with("", Ink.SKY, means))
                .build();
    }

    static Shown weather(HourlyWeather weather) {
        Temperature coldest = weather.coldest();
        Unit unit = UnitSystem.current().unitOf(Temperature.KIND);
        return Composed.titled("Weather of a year: " + weather.name())
                .line(weather.hours() + " hours.")
                .fact("coldest hour", coldest)
                .fact("warmest hour", weather.warmest())
                .chart(sorted(
                        weather.name() + ": hours at or above each outdoor temperature",
                        Axis.of("Outdoor temperature", unit.symbol()),
                        List.of(duration(
                                        weather.hours(),
                                        hour -> unit.fromSi(weather.at(hour).si()))
                                .in(Ink.BLUE))))
                .shown(weather);
    }

    static Shown way(LoadToFlow way) {
        List<Double> loads = new ArrayList<>();
        List<Double> flows = new ArrayList<>();
        for (int percent = 0; percent <= SHARES; percent++) {
            try {
                flows.add(SHARES * way.flowShare(percent / SHARES));
                loads.add((double) percent);
            } catch (Refusal beyond) {
                break;
            }
        }
        return Composed.titled("Load to flow by " + way.name())
                .line("Half the load asks for " + Ratio.of(way.flowShare(0.5)) + " of design flow.")
                .chart(Chart.titled("Flow over load by " + way.name())
                        .across(Axis.of("Load", "%").from(0))
                        .panel(
                                Axis.of("Flow", "%").from(0),
                                Line.through(array(loads), array(flows)).in(Ink.BLUE))
                        .build())
                .shown(way);
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Returns the same year shared in several ways, a row each. */
    static Shown sharings(List<BranchYear> years) {
        String title = "Years of branches, by how they share the load";
        Table table = Table.of(
                        title,
                        Column.text("load"),
                        Column.text("shared"),
                        Column.of("mean flow together", Ratio.KIND),
                        Column.of("least of a branch", Ratio.KIND),
                        Column.of("most of a branch", Ratio.KIND))
                .rows(years.stream()
                        .map(year -> {
                            double[] means = IntStream.range(0, year.branches().size())
                                    .mapToDouble(branch -> IntStream.range(0, year.hours())
                                            .mapToDouble(hour -> year.flowShareAt(hour, branch))
                                            .average()
                                            .orElseThrow())
                                    .sorted()
                                    .toArray();
                            return new Object[] {
                                year.load().name(),
                                year.shared(),
                                year.together().meanFlowFraction(),
                                Ratio.of(means[0]),
                                Ratio.of(means[means.length - 1])
                            };
                        })
                        .toList());
        Notes notes = years.stream().map(BranchYear::notes).reduce(Notes.NONE, Notes::and);
        Basis basis = years.stream().map(BranchYear::basis).reduce(Basis.NONE, Basis::and);
        return Composed.titled(title)
                .line("Means are over all hours, in shares of design flow.")
                .table(table)
                .shown(notes, basis);
    }

    static Shown branches(BranchYear year) {
        Table table = Table.of(
                "What each branch is asked for",
                Column.text("branch"),
                Column.of("design flow", Flow.KIND),
                Column.of("mean while asked", Ratio.KIND),
                Column.of("hours asked", Time.KIND));
        List<Mark> lines = new ArrayList<>();
        for (int i = 0; i < year.branches().size(); i++) {
            int branch = i;
            BranchYear.Asked asked = year.branches().get(i);
            boolean ever = IntStream.range(0, year.hours()).anyMatch(hour -> year.flowShareAt(hour, branch) > 0);
            LoadProfile profile = ever ? year.of(i) : null;
            table = table.row(
                    asked.name(),
                    asked.design(),
                    ever ? profile.meanFlowFraction() : null,
                    ever ? profile.pumpingHours() : Time.ZERO);
            lines.add(duration(year.hours(), hour -> SHARES * year.flowShareAt(hour, branch))
                    .in(INKS.get(i % INKS.size()))
                    .broken(DASHES.get(i / INKS.size() % DASHES.size()))
                    .labelled(asked.name()));
        }
        return Composed.titled("Year of " + year.branches().size() + " branches: "
                        + year.load().name())
                .line("The load is shared: " + year.shared() + ". Together they are asked for "
                        + year.together().meanFlowFraction() + " of design flow on average while asked.")
                .table(table)
                .chart(sorted(
                        year.load().name() + ", " + year.shared() + ": hours at or above each flow",
                        Axis.of("Flow of the branch", "%").from(0),
                        lines))
                .shown(year);
    }
}

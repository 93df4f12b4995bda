package headrace.report;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.mark.Symbol;
import headrace.trend.Drift;
import headrace.trend.HourSeries;
import headrace.trend.MapCheck;
import headrace.units.Unit;
import headrace.units.UnitSystem;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/** Residuals over time with their limits; of a log of many weeks the means of several hours. */
final class ResidualChart {
    /** The limits of single residuals: of a thousand sound ones three lie beyond. */
    private static final double DEVIATIONS = 3;

    private static final double SHOWN_LIMITS = 3;
    private static final double HOURS_OF_DAY = 24;
    private static final int MOST_POINTS = 600;

    private final HourSeries series;
    private final Unit unit;

    private ResidualChart(HourSeries series) {
        this.series = series;
        this.unit = UnitSystem.current().unitOf(series.channel().kind());
    }

    static Chart of(MapCheck check) {
        List<HourSeries> all = check.residuals();
        Chart.Draft draft = Chart.titled("Residuals of " + check.log().name()).across(days(all.get(0)));
        for (HourSeries series : all) {
            ResidualChart chart = new ResidualChart(series);
            draft.panel(chart.axis(), chart.marks());
        }
        return draft.caption("Measured less expected. Limits at three standard deviations of a reference hour.")
                .build();
    }

    static Chart of(Drift drift) {
        ResidualChart chart = new ResidualChart(drift.series());
        return Chart.titled("Drift of the " + drift.series().channel().words())
                .across(days(drift.series()))
                .panel(chart.axis(), chart.marks())
                .panel(Axis.of("Sums", "standard deviations").from(0), chart.sums(drift))
                .caption("An alarm is where a sum passes its limit; sums are shown up to " + (int) SHOWN_LIMITS
                        + " limits.")
                .build();
    }

    private static Axis days(HourSeries series) {
        String start =
                Instant.ofEpochSecond(3600 * series.hours()[0]).toString().substring(0, 10);
        return Axis.of("Time since " + start, "days");
    }

    private Axis axis() {
        String words = series.channel().words();
        return Axis.of(
                words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + " residual", unit.symbol());
    }

    private double day(int hour) {
        return (series.hours()[hour] - series.hours()[0]) / HOURS_OF_DAY;
    }

    /** Returns the residuals before and after the end of the reference, and the limits. */
    private List<Mark> marks() {
        int step = 1 + (series.count() - 1) / MOST_POINTS;
        List<Mark> marks = new ArrayList<>();
        points(0, series.reference(), step).ifPresent(p -> marks.add(p.in(Ink.GREY)));
        points(series.reference(), series.count(), step).ifPresent(p -> marks.add(p.in(Ink.BLUE)));
        double limit = DEVIATIONS * series.deviation() / Math.sqrt(step) / unit.factor();
        double mean = series.mean() / unit.factor();
        marks.add(Reference.atHeight(mean + limit, "").in(Ink.VERMILION));
        marks.add(Reference.atHeight(mean - limit, "").in(Ink.VERMILION));
        if (series.reference() < series.count()) {
            marks.add(Reference.standingAt(day(series.reference()), ""));
        }
        return marks;
    }

    private Optional<Points> points(int from, int end, int step) {
        int count = (end - from) / step;
        if (count == 0) {
            return Optional.empty();
        }
        double[] x =
                IntStream.range(0, count).mapToDouble(i -> day(from + i * step)).toArray();
        double[] y = IntStream.range(0, count)
                .mapToDouble(i -> Arrays.stream(series.values(), from + i * step, from + (i + 1) * step)
                                .average()
                                .orElseThrow()
                        / unit.factor())
                .toArray();
        return Optional.of(Points.at(x, y).as(Symbol.PLUS));
    }

    private List<Mark> sums(Drift drift) {
        int n = series.count();
        int step = 1 + (n - 1) / MOST_POINTS;
        int[] at = IntStream.range(0, 1 + (n - 1) / step).map(i -> i * step).toArray();
        double[] x = Arrays.stream(at).mapToDouble(this::day).toArray();
        double most = SHOWN_LIMITS * drift.limit();
        return List.of(
                Line.through(
                                x,
                                Arrays.stream(at)
                                        .mapToDouble(i -> Math.min(most, drift.highAt(i)))
                                        .toArray())
                        .labelled("too high"),
                Line.through(
                                x,
                                Arrays.stream(at)
                                        .mapToDouble(i -> Math.min(most, drift.lowAt(i)))
                                        .toArray())
                        .in(Ink.GREEN)
                        .broken(Dash.DASH_DOT)
                        .labelled("too low"),
                Reference.atHeight(drift.limit(), "limit").in(Ink.VERMILION));
    }
}

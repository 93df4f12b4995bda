package headrace.report;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.trend.Channel;
import headrace.trend.Drift;
import headrace.trend.FaultTable;
import headrace.trend.HourSeries;
import headrace.trend.MapCheck;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How a log held against the pump map shows itself: residuals, drift, faults. */
final class ResidualReports {
    private static final String ALARM =
            "Where a sensor drifts, the control that follows it is wrong too: see which speed the drive takes meanwhile";

    private ResidualReports() {}

    static Shown check(MapCheck check) {
        Composed composed = Composed.titled(check.log().name() + " against the map of "
                        + check.set().curve().name())
                .line("Reference until " + check.log().clock(check.until()) + ".")
                .fact("measured head over that of the map", check.headFactor())
                .fact(
                        "measured power over that of the map",
                        Power.watts(check.powerLine().intercept()) + " + "
                                + Numbers.print(check.powerLine().slope()) + " × map")
                .fact("CV(RMSE) of the power in the reference", check.quality().cvRmse())
                .fact("bias of the power after it", check.biasAfter());
        return composed.chart(ResidualChart.of(check))
                .chart(CloudChart.of(check))
                .table(residuals(check))
                .shown(check);
    }

    private static Table residuals(MapCheck check) {
        Table table = Table.of(
                "Residuals, measured less expected, hour by hour",
                Column.text("of"),
                Column.number("reference hours"),
                Column.text("scatter of an hour"),
                Column.number("hours after"),
                Column.text("mean after"));
        for (HourSeries series : check.residuals()) {
            int after = series.count() - series.reference();
            double sum = 0;
            for (int i = series.reference(); i < series.count(); i++) {
                sum += series.values()[i];
            }
            table = table.row(
                    series.channel().words(),
                    series.reference(),
                    series.channel().print(series.deviation()),
                    after,
                    after == 0 ? null : series.channel().print(sum / after));
        }
        return table;
    }

    static Shown drift(Drift drift) {
        Channel channel = drift.series().channel();
        Composed composed = Composed.titled("Drift of the " + channel.words())
                .line(drift.alarm()
                        .map(alarm -> "The " + channel.words() + " is too " + (alarm.low() ? "low" : "high")
                                + ": alarm at " + clock(alarm.hour()) + ", begun at about " + clock(alarm.began())
                                + ".")
                        .orElse("No drift is found."))
                .line("Expected are " + Numbers.print(drift.falseAlarmsPerYear())
                        + " false alarms in a year of hours, at most.")
                .fact("limit of the sums", Numbers.print(drift.limit()) + " standard deviations")
                .fact("standard deviation of an hour", channel.print(drift.deviation()))
                .fact("reference", drift.series().reference() + " hours")
                .chart(ResidualChart.of(drift));
        return drift.alarm().isPresent() ? composed.shown(Notes.NONE, Basis.NONE, ALARM) : composed.shown();
    }

    /** Hours stand in UTC, since a drift knows no log. */
    private static String clock(long hour) {
        return Instant.ofEpochSecond(3600 * hour).toString().substring(0, 16).replace('T', ' ') + " UTC";
    }

    static Shown faults(FaultTable table) {
        List<FaultTable.Row> found = table.findings();
        Composed composed = Composed.titled("Faults: " + table.check().log().name());
        if (found.isEmpty()) {
            composed.line("No finding in " + table.hours() + " hours after the reference; " + rounded(table.nothing())
                    + " likely that none of these is there.");
        }
        for (FaultTable.Row row : found) {
            composed.line(capital(row.condition().words()) + ": " + rounded(row.likelihood()) + " likely, " + row.size()
                    + " ± "
                    + row.uncertainty() + " " + row.condition().sizeOf() + ". Look at "
                    + String.join(", ", row.condition().lookAt()) + ".");
        }
        return composed.chart(faultChart(table)).table(rows(table)).shown(table, Caution.ESTIMATE, Caution.RESTART);
    }

    /** A likelihood is not known to more than a tenth of a per cent. */
    private static Ratio rounded(Ratio likelihood) {
        return Ratio.of(Math.rint(likelihood.value() * 1000) / 1000);
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static Table rows(FaultTable table) {
        List<Object[]> rows = new ArrayList<>();
        for (FaultTable.Row row : table.rows()) {
            rows.add(new Object[] {
                row.condition().words(),
                rounded(row.likelihood()),
                row.size(),
                row.uncertainty(),
                row.condition().sizeOf(),
                row.logEvidence()
            });
        }
        return Table.of(
                        "Conditions, each with its likelihood and its size if it is there",
                        Column.text("condition"),
                        Column.of("likelihood", Ratio.KIND),
                        Column.of("size", Ratio.KIND),
                        Column.of("uncertainty, k = 2", Ratio.KIND),
                        Column.text("of what"),
                        Column.number("log evidence alone"))
                .rows(rows);
    }

    private static Chart faultChart(FaultTable table) {
        Ruler share = Ruler.of(Ratio.KIND);
        List<String> names = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (FaultTable.Row row : table.rows()) {
            names.add(row.condition().words());
            values.add(share.on(rounded(row.likelihood()).si()));
        }
        Axis axis = share.axis("Likelihood").from(0).to(100);
        return Chart.titled("How likely each condition is")
                .across(axis)
                .bars(Bars.of(names).with("", Ink.SKY, values))
                .build();
    }
}

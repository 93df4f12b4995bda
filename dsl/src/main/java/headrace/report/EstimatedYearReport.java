package headrace.report;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.EstimatedYear;
import headrace.units.Energy;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** How a year under a law on estimates shows itself. */
final class EstimatedYearReport {
    private EstimatedYearReport() {}

    static Shown of(EstimatedYear year) {
        EstimatedYear.Band joules = year.joules();
        EstimatedYear.Band seconds = year.secondsShort();
        Energy sensors = year.energyWithSensors();
        return Composed.titled("A year under '" + year.law().name() + "'")
                .line("On estimates " + year.energy() + ", with sensors " + sensors
                        + ". Pumps that differ from their map as"
                        + " its errors allow take " + Energy.joules(joules.low()) + " to "
                        + Energy.joules(joules.high())
                        + " (95 % of them).")
                .fact(
                        "energy against sensors",
                        Ratio.of(year.energy().over(sensors).value() - 1))
                .fact(
                        "hours with a head more than 2 % of design head short",
                        Time.seconds(seconds.value()) + "; " + Time.seconds(seconds.low()) + " to "
                                + Time.seconds(seconds.high()) + " over 95 % of the pumps")
                .chart(chart(year))
                .table(table(year))
                .shown(year, Caution.SENSOR, Caution.ESTIMATE);
    }

    private static Chart chart(EstimatedYear year) {
        Ruler head = Ruler.of(Head.KIND);
        List<EstimatedYear.Row> rows = year.rows().stream()
                .sorted(Comparator.comparing(EstimatedYear.Row::fraction))
                .toList();
        double[] x =
                rows.stream().mapToDouble(row -> row.fraction().toPercent()).toArray();
        double[] value =
                rows.stream().mapToDouble(row -> head.on(row.excess().value())).toArray();
        double[] low =
                rows.stream().mapToDouble(row -> head.on(row.excess().low())).toArray();
        double[] high =
                rows.stream().mapToDouble(row -> head.on(row.excess().high())).toArray();
        List<Mark> marks = new ArrayList<>();
        if (x.length > 1) {
            marks.add(Area.between(x, low, high).labelled("95 % of the pumps"));
            marks.add(Line.through(x, value).labelled("as it is said to be"));
        } else {
            marks.add(Points.at(x, value));
        }
        marks.add(Reference.atHeight(0, "what the law asks for").in(Ink.BLACK));
        return Chart.titled("Head above what the law asks for")
                .across(Axis.of("Flow", "% of design").from(0))
                .panel(head.axis("Head above the law"), marks)
                .build();
    }

    private static Table table(EstimatedYear year) {
        return Table.of(
                        "Head above what the law asks for",
                        Column.of("load", Ratio.KIND),
                        Column.of("hours", Time.KIND),
                        Column.of("asked", Head.KIND),
                        Column.of("above", Head.KIND),
                        Column.of("2.5 %", Head.KIND),
                        Column.of("97.5 %", Head.KIND))
                .rows(year.rows().stream()
                        .map(row -> new Object[] {
                            row.fraction(),
                            row.hours(),
                            row.asked(),
                            metres(row.excess().value()),
                            metres(row.excess().low()),
                            metres(row.excess().high())
                        })
                        .toList());
    }

    /** What differs by rounding alone does not differ. */
    private static Head metres(double value) {
        return Head.metres(Math.abs(value) < 1e-9 ? 0 : value);
    }
}

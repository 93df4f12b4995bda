package headrace.report.plant;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.operation.suction.NpshCheck;
import headrace.report.Caution;
import headrace.report.Composed;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.rule.MinimumHeadLimit;
import headrace.selection.Candidate;
import headrace.selection.Shortlist;
import headrace.units.Energy;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;

/** How a shortlist shows itself: the ranking with its columns, and the dropped with their reasons. */
public final class ShortlistReport {
    private static final int MOST_BARS = 20;

    private ShortlistReport() {}

    /** Shows a shortlist. */
    public static Shown of(Shortlist shortlist) {
        Composed shown = Composed.titled("Pumps for " + shortlist.wish().duty() + ": " + shortlist)
                .line(shortlist.ranked().size() + " of "
                        + (shortlist.ranked().size() + shortlist.dropped().size())
                        + " candidates can do it, ranked by what the wire gives in the year.");
        if (!shortlist.ranked().isEmpty()) {
            shown.table(ranking(shortlist)).table(conditions(shortlist)).chart(chart(shortlist));
        }
        if (!shortlist.dropped().isEmpty()) {
            Table table = Table.of("Dropped", Column.text("pump"), Column.text("reason"));
            shown.table(table.rows(shortlist.dropped().stream()
                    .map(each -> new Object[] {each.name(), each.reason()})
                    .toList()));
        }
        return shown.shown(shortlist, Caution.ESTIMATE);
    }

    private static Table ranking(Shortlist shortlist) {
        Table table = Table.of(
                "Ranking",
                Column.number("rank"),
                Column.text("pump"),
                Column.of("wire energy of the year", Energy.KIND),
                Column.of("more than the first", Ratio.KIND),
                Column.of("speed at the duty", Speed.KIND),
                Column.of("shaft power", Power.KIND),
                Column.of("wire power", Power.KIND),
                Column.of("wire to water", Ratio.KIND),
                Column.of("motor", Power.KIND));
        Energy least = shortlist.ranked().get(0).yearEnergy();
        List<Object[]> rows = new ArrayList<>();
        for (int i = 0; i < shortlist.ranked().size(); i++) {
            Candidate each = shortlist.ranked().get(i);
            rows.add(new Object[] {
                i + 1,
                each.name(),
                each.yearEnergy(),
                Ratio.of(each.yearEnergy().over(least).value() - 1),
                each.point().speed(),
                each.point().shaftPower(),
                each.point().wirePower(),
                each.point().wireToWater(),
                each.set().driveTrain().motor().rated()
            });
        }
        return table.rows(rows);
    }

    private static Table conditions(Shortlist shortlist) {
        Table table = Table.of(
                "Region, suction and minimum head",
                Column.text("pump"),
                Column.of("duty over best-efficiency flow", Ratio.KIND),
                Column.text("region"),
                Column.of("hours in the preferred region", Ratio.KIND),
                Column.of("NPSH margin", Head.KIND),
                Column.text("minimum heads that pass the rule"));
        return table.rows(shortlist.ranked().stream()
                .map(each -> new Object[] {
                    each.name(),
                    each.region().share(),
                    each.region().zone().toString(),
                    each.preferred(),
                    each.npsh().map(NpshCheck::margin).orElse(null),
                    window(each.largestMinimumHead(), shortlist)
                })
                .toList());
    }

    private static String window(MinimumHeadLimit limit, Shortlist shortlist) {
        String from = shortlist
                .wish()
                .conditions()
                .leastMinimumHead()
                .map(least -> least + " to ")
                .orElse("up to ");
        return switch (limit.outcome()) {
            case ALL -> from + "100 %";
            case NONE -> "none";
            case UP_TO -> from + limit.minimumHead();
        };
    }

    private static Chart chart(Shortlist shortlist) {
        Ruler energy = Ruler.of(Energy.KIND);
        List<Candidate> first = shortlist.ranked().stream().limit(MOST_BARS).toList();
        return Chart.titled("Energy from the wire in the year")
                .across(energy.axis("Energy").from(0))
                .bars(Bars.of(first.stream().map(Candidate::name).toList())
                        .with(
                                "",
                                Ink.SKY,
                                first.stream()
                                        .map(each -> energy.on(each.yearEnergy().si()))
                                        .toList()))
                .build();
    }
}

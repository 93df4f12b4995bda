package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.BinResult;
import headrace.energy.LawYear;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Time;
import java.util.List;
import java.util.Optional;

/** How a year under one law shows itself: where in the load profile its energy goes; and several, a row each. */
final class LawYearReports {
    private LawYearReports() {}

    static Shown of(LawYear year) {
        return Composed.titled("A year under '" + year.law().name() + "'")
                .line("The wire gives " + year.wireEnergy() + " for " + year.cost() + ".")
                .fact("taken up by the liquid", year.hydraulicEnergy())
                .fact("taken from the shaft", year.shaftEnergy())
                .fact("taken from the wire", year.wireEnergy())
                .chart(chart(year))
                .table(bins(year))
                .shown(year, Caution.ESTIMATE);
    }

    private static Chart chart(LawYear year) {
        Ruler energy = Ruler.of(Energy.KIND);
        return Chart.titled("Energy from the wire at each share of design flow")
                .across(energy.axis("Energy").from(0))
                .bars(Bars.of(year.bins().stream()
                                .map(bin -> bin.bin().flowFraction().toString())
                                .toList())
                        .with(
                                "",
                                Ink.SKY,
                                year.bins().stream()
                                        .map(bin -> energy.on(bin.wireEnergy().si()))
                                        .toList()))
                .build();
    }

    private static Table bins(LawYear year) {
        Table table = Table.of(
                "The load profile",
                Column.of("share of design flow", Ratio.KIND),
                Column.of("time", Time.KIND),
                Column.of("flow", Flow.KIND),
                Column.of("speed", Speed.KIND),
                Column.of("head", Head.KIND),
                Column.of("wire power", Power.KIND),
                Column.of("wire energy", Energy.KIND));
        for (BinResult bin : year.bins()) {
            Optional<OperatingPoint> point = bin.state().map(state -> state.point());
            table = table.row(
                    bin.bin().flowFraction(),
                    bin.bin().hours(),
                    bin.flow(),
                    point.map(OperatingPoint::speed).orElse(null),
                    point.map(OperatingPoint::head).orElse(null),
                    bin.wirePower(),
                    bin.wireEnergy());
        }
        return table;
    }

    static Shown all(List<LawYear> years) {
        Table table = Table.of(
                        "The year at the wire",
                        Column.text("law"),
                        Column.of("shaft energy", Energy.KIND),
                        Column.of("wire energy", Energy.KIND),
                        Column.in("cost", years.get(0).cost().currency()))
                .rows(years.stream()
                        .map(year ->
                                new Object[] {year.law().name(), year.shaftEnergy(), year.wireEnergy(), year.cost()})
                        .toList());
        Notes notes = years.stream().map(LawYear::notes).reduce(Notes.NONE, Notes::and);
        Basis basis = years.stream().map(LawYear::basis).reduce(Basis.NONE, Basis::and);
        return Composed.titled("The year at the wire").table(table).shown(notes, basis, Caution.ESTIMATE);
    }
}

package headrace.report.sheet;

import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.year.CircuitYear;
import headrace.energy.year.LawHours;
import headrace.energy.year.Shortfall;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.units.Energy;
import headrace.units.Money;
import headrace.units.Time;
import headrace.units.Volume;
import java.util.List;

/**
 * The sheet for the removal of a remote sensor: what the year takes and what the branches lack, with it and without.
 */
public final class SensorSheet {
    private SensorSheet() {}

    /**
     * The two laws that are held against each other.
     *
     * @param with the name of the law with the remote sensor
     * @param without the name of the law without it
     * @param alarm what replaces the alarm of the sensor; blank if it was not stated
     */
    public record Removal(String with, String without, String alarm) {}

    /** Returns the sheet as a draft, to which more can be added. */
    public static Sheet.Draft of(SheetHead head, CircuitYear year, Removal removal) {
        LawHours with = law(year, removal.with());
        LawHours without = law(year, removal.without());
        Sheet.Draft draft = Sheet.titled(head)
                .part("With and without the remote sensor", comparison(year, with, without))
                .part("All laws over the year", year)
                .part("The alarm", alarm(removal));
        if (removal.alarm().isBlank()) {
            draft.note(SheetProblem.NOT_STATED, "What replaces the alarm of the sensor was not stated");
        }
        return draft;
    }

    private static LawHours law(CircuitYear year, String name) {
        List<String> names = year.laws().stream().map(law -> law.law().name()).toList();
        return year.laws().stream()
                .filter(law -> law.law().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        SheetProblem.INCOMPLETE_SHEET,
                        "Asked for the law '" + name + "' of a year",
                        "Its laws are " + String.join("; ", names),
                        Nearest.sentence(Nearest.to(name, names), "Name one of them")));
    }

    private static Shown comparison(CircuitYear year, LawHours with, LawHours without) {
        String currency = year.price().perKilowattHour().currency();
        Table table = Table.of(
                "The year",
                Column.text("law"),
                Column.of("wire energy", Energy.KIND),
                Column.in("cost", currency),
                Column.of("unmet branch-hours", Time.KIND),
                Column.of("unmet flow", Volume.KIND),
                Column.text("worst shortfall"));
        for (LawHours each : List.of(with, without)) {
            table = table.row(
                    each.law().name(),
                    each.energy().wire(),
                    year.price().of(each.energy().wire()),
                    each.service().starvedBranchHours(),
                    each.service().unmet(),
                    each.service().worst().map(Shortfall::toString).orElse("none"));
        }
        return Composed.titled("'" + without.law().name() + "' in place of '"
                        + with.law().name() + "'")
                .line(energy(year, with, without))
                .line(service(with, without))
                .table(table)
                .shown();
    }

    private static String energy(CircuitYear year, LawHours with, LawHours without) {
        Energy more = without.energy().wire().minus(with.energy().wire());
        Energy size = more.si() < 0 ? more.times(-1) : more;
        Money cost = year.price().of(size);
        return "Without the sensor the wire gives " + size + (more.si() < 0 ? " less" : " more") + " a year, " + cost
                + ".";
    }

    private static String service(LawHours with, LawHours without) {
        Time before = with.service().starvedBranchHours();
        Time after = without.service().starvedBranchHours();
        return "Branches get less than 99 % of their demand for " + before + " with the sensor and for " + after
                + " without it, hours of all branches added up.";
    }

    private static Shown alarm(Removal removal) {
        return Composed.titled("A sensor that is removed takes its alarm with it")
                .fact(
                        "what replaces it",
                        removal.alarm().isBlank() ? "to be stated before this sheet is used" : removal.alarm())
                .shown();
    }
}

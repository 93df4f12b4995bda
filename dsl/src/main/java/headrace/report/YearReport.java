package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.year.CircuitYear;
import headrace.energy.year.EnergyShares;
import headrace.energy.year.LawHours;
import headrace.energy.year.LawSaving;
import headrace.units.Energy;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** How the year of a circuit under several laws shows itself: a sentence, a table, a chart. */
final class YearReport {
    private YearReport() {}

    static Shown of(CircuitYear year) {
        Composed composed = Composed.titled("A year of the circuit: " + year.year())
                .line(sentence(year))
                .line(margin(year));
        year.laws()
                .forEach(law -> law.service()
                        .worst()
                        .ifPresent(worst -> composed.line("'" + law.law().name() + "' serves worst " + worst + ".")));
        return composed.chart(chart(year))
                .table(laws(year))
                .table(savings(year))
                .shown(year, Caution.RETUNING, Caution.ESTIMATE);
    }

    static Shown of(LawHours law) {
        EnergyShares shares = law.shares();
        Composed composed = Composed.titled("A year under '" + law.law().name() + "'")
                .fact("energy from the wire", law.energy().wire())
                .fact("energy into the shaft", law.energy().shaft())
                .fact("greatest power", law.peak().power() + " at " + law.peak().when())
                .fact("running", law.running().on() + ", " + law.running().starts() + " starts")
                .fact("in the preferred region", law.running().preferred())
                .fact("mean head", law.running().meanHead())
                .fact("branch-hours with too little", law.service().starvedBranchHours())
                .fact("unmet flow", law.service().unmet())
                .fact("worst", law.service().worst())
                .fact("needed by the circuit", shares.needed())
                .fact("throttled away", shares.throttled())
                .fact("lost in the pump", shares.pump())
                .fact("lost in motor and drive", shares.motorAndDrive())
                .fact("standby", shares.standby());
        return composed.shown(law);
    }

    /** One sentence that a client can read. */
    private static String sentence(CircuitYear year) {
        return year.best()
                .map(best -> {
                    LawSaving full = saving(year, best, 0);
                    LawSaving fixed = saving(year, best, 1);
                    return "'" + best.law().name() + "' serves every branch with the least energy: "
                            + best.energy().wire() + " a year, "
                            + Ratio.of(full.share().value()) + " less than full speed throttled and "
                            + fixed.share() + " less than a fixed design speed, worth "
                            + full.worth(year.price()) + " and " + fixed.worth(year.price()) + " at the wire.";
                })
                .orElse("None of these laws gives every branch what it asks for.");
    }

    private static LawSaving saving(CircuitYear year, LawHours law, int baseline) {
        return year.savings().get(2 * year.laws().indexOf(law) + baseline);
    }

    private static String margin(CircuitYear year) {
        double margin = year.margin().value();
        String needed = "At its design flows the circuit needs " + year.neededAtDesign() + "; ";
        if (Math.abs(margin) < 5e-4) {
            return needed + "that is what was specified.";
        }
        return needed + year.design().head() + " were specified, "
                + (margin > 0 ? year.margin() + " more." : Ratio.of(-margin) + " less.");
    }

    /** Returns the baselines and the laws; a law that is a baseline too stands there once. */
    private static List<LawHours> all(CircuitYear year) {
        List<LawHours> all = new ArrayList<>(year.baselines());
        year.laws().stream()
                .filter(law -> year.baselines().stream().noneMatch(base -> same(base, law)))
                .forEach(all::add);
        return all;
    }

    private static boolean same(LawHours one, LawHours other) {
        return one.law().name().equals(other.law().name())
                && one.energy().wire().equals(other.energy().wire());
    }

    private static Chart chart(CircuitYear year) {
        Ruler energy = Ruler.of(Energy.KIND);
        List<LawHours> all = all(year);
        Bars bars = Bars.of(all.stream().map(law -> law.law().name()).toList()).asStacked();
        bars = with(bars, all, energy, "needed by the circuit", Ink.SKY, EnergyShares::needed);
        bars = with(bars, all, energy, "throttled away", Ink.ORANGE, EnergyShares::throttled);
        bars = with(bars, all, energy, "lost in the pump", Ink.GREY, EnergyShares::pump);
        bars = with(
                bars,
                all,
                energy,
                "motor, drive and standby",
                Ink.PURPLE,
                shares -> shares.motorAndDrive().plus(shares.standby()));
        return Chart.titled("Where the energy of the year goes")
                .across(energy.axis("Energy from the wire").from(0))
                .bars(bars)
                .build();
    }

    private static Bars with(
            Bars bars, List<LawHours> all, Ruler energy, String label, Ink ink, Function<EnergyShares, Energy> part) {
        return bars.with(
                label,
                ink,
                all.stream()
                        .map(law ->
                                energy.on(Math.max(0, part.apply(law.shares()).si())))
                        .toList());
    }

    private static Table laws(CircuitYear year) {
        List<LawHours> all = all(year);
        return Table.of(
                        "The year under each law",
                        Column.text("law"),
                        Column.of("energy", Energy.KIND),
                        Column.of("peak", Power.KIND),
                        Column.of("branch-hours starved", Time.KIND),
                        Column.of("worst delivered", Ratio.KIND),
                        Column.text("at"),
                        Column.of("preferred region", Ratio.KIND),
                        Column.number("starts"))
                .rows(all.stream().map(YearReport::row).toList());
    }

    private static Object[] row(LawHours law) {
        return new Object[] {
            law.law().name(),
            law.energy().wire(),
            law.peak().power(),
            law.service().starvedBranchHours(),
            law.service().worst().map(worst -> worst.delivered()).orElse(Ratio.of(1)),
            law.service().worst().map(worst -> worst.branch()).orElse(""),
            law.running().preferred(),
            law.running().starts()
        };
    }

    private static Table savings(CircuitYear year) {
        return Table.of(
                        "Savings in a year",
                        Column.text("law"),
                        Column.text("against"),
                        Column.of("at the wire", Energy.KIND),
                        Column.of("share", Ratio.KIND),
                        Column.of("at the shaft", Energy.KIND),
                        Column.of("by the law", Energy.KIND),
                        Column.of("of the margin", Energy.KIND),
                        Column.in("worth", year.price().perKilowattHour().currency()))
                .rows(year.savings().stream().map(saving -> row(saving, year)).toList());
    }

    private static Object[] row(LawSaving saving, CircuitYear year) {
        return new Object[] {
            saving.after().law().name(),
            saving.baseline().words(),
            saving.atWire(),
            saving.share(),
            saving.atShaft(),
            saving.ofLaw(),
            saving.ofMargin(),
            saving.worth(year.price())
        };
    }
}

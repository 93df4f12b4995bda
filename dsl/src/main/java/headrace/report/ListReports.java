package headrace.report;

import headrace.circuit.part.Part;
import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.control.duty.Fault;
import headrace.curve.CurvePoint;
import headrace.curve.ImpellerSizing;
import headrace.data.Column;
import headrace.data.Table;
import headrace.economics.CostItem;
import headrace.economics.tariff.EnergyRate;
import headrace.energy.LawYear;
import headrace.energy.PowerSaving;
import headrace.energy.RegionHours;
import headrace.energy.YearSaving;
import headrace.energy.load.BranchYear;
import headrace.energy.load.LoadPattern;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.report.circuit.BranchReports;
import headrace.report.circuit.PatternReports;
import headrace.report.money.CostReports;
import headrace.report.plant.DutyReports;
import headrace.rule.RuleVerdict;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How a list of results of one kind shows itself: as one table. */
final class ListReports {
    private ListReports() {}

    /** Returns the table of a list, or nothing if it is no list of one such kind. */
    static Optional<Shown> of(Object object) {
        if (!(object instanceof Collection<?> several) || several.isEmpty()) {
            return Optional.empty();
        }
        return all(several, SteadyState.class, ListReports::steadyStates)
                .or(() -> all(several, OperatingPoint.class, ListReports::operatingPoints))
                .or(() -> all(several, CurvePoint.class, ListReports::curvePoints))
                .or(() -> all(several, ImpellerSizing.Sized.class, CurveChoiceReports::sized))
                .or(() -> all(several, BranchYear.class, YearReports::sharings))
                .or(() -> all(several, RuleVerdict.class, ListReports::verdicts))
                .or(() -> all(several, PowerSaving.class, ListReports::powerSavings))
                .or(() -> all(several, YearSaving.class, ListReports::yearSavings))
                .or(() -> all(several, RegionHours.class, ListReports::regionHours))
                .or(() -> all(several, LawYear.class, LawYearReports::all))
                .or(() -> all(several, ControlLaw.class, SetReports::controlLaws))
                .or(() -> all(several, Part.class, BranchReports::list))
                .or(() -> all(several, LoadPattern.class, PatternReports::patterns))
                .or(() -> all(several, Fault.class, DutyReports::faults))
                .or(() -> all(several, CostItem.class, CostReports::items))
                .or(() -> all(several, EnergyRate.class, CostReports::rates))
                .or(() -> RecordReports.of(several));
    }

    private static <T> Optional<Shown> all(Collection<?> several, Class<T> type, Function<List<T>, Shown> shown) {
        return several.stream().allMatch(type::isInstance)
                ? Optional.of(shown.apply(several.stream().map(type::cast).toList()))
                : Optional.empty();
    }

    private static Shown operatingPoints(List<OperatingPoint> points) {
        return traced("Operating points", points, OperatingPoints.table("Operating points", points));
    }

    private static Shown steadyStates(List<SteadyState> states) {
        return traced(
                "Operating points",
                states,
                OperatingPoints.table(
                        "Operating points",
                        states.stream().map(SteadyState::point).toList()));
    }

    private static Shown curvePoints(List<CurvePoint> points) {
        Table table = Table.of(
                        "Points of a pump curve",
                        Column.of("flow", Flow.KIND),
                        Column.of("head", Head.KIND),
                        Column.of("shaft power", Power.KIND),
                        Column.of("efficiency", Ratio.KIND),
                        Column.of("speed", Speed.KIND))
                .rows(points.stream()
                        .map(point -> new Object[] {
                            point.flow(), point.head(), point.shaftPower(), point.efficiency(), point.speed()
                        })
                        .toList());
        Notes notes = points.stream().map(CurvePoint::notes).reduce(Notes.NONE, Notes::and);
        return Composed.titled("Points of a pump curve").table(table).shown(notes);
    }

    private static Shown verdicts(List<RuleVerdict> verdicts) {
        Table table = Table.of(
                        "Part-load rule: " + verdicts.get(0).rule().id(),
                        Column.text("law"),
                        Column.text("verdict"),
                        Column.of("share at the wire", Ratio.KIND),
                        Column.of("allowed", Ratio.KIND),
                        Column.of("margin", Ratio.KIND),
                        Column.of("share at the shaft", Ratio.KIND))
                .rows(verdicts.stream()
                        .map(verdict -> new Object[] {
                            verdict.law().name(),
                            verdict.passes() ? "passes" : "fails",
                            verdict.share(),
                            verdict.rule().powerFraction(),
                            verdict.margin(),
                            verdict.shaftShare()
                        })
                        .toList());
        return traced("Part-load rule", verdicts, table, Caution.ESTIMATE);
    }

    static Shown powerSavings(List<PowerSaving> savings) {
        return traced(
                "Power saved, by basis", savings, powerSavings("Power saved, by basis", savings), Caution.ESTIMATE);
    }

    static Table powerSavings(String title, List<PowerSaving> savings) {
        return Table.of(
                        title,
                        Column.text("law"),
                        Column.text("against"),
                        Column.of("at the shaft", Power.KIND),
                        Column.of("shaft share", Ratio.KIND),
                        Column.of("at the wire", Power.KIND),
                        Column.of("wire share", Ratio.KIND))
                .rows(savings.stream()
                        .map(saving -> new Object[] {
                            saving.law().name(),
                            saving.baseline().words(),
                            saving.shaft(),
                            saving.shaftShare(),
                            saving.wire(),
                            saving.wireShare()
                        })
                        .toList());
    }

    static Shown yearSavings(List<YearSaving> savings) {
        Table table = Table.of(
                        "Saved in the year at the wire, by basis",
                        Column.text("law"),
                        Column.text("against"),
                        Column.of("energy", Energy.KIND),
                        Column.of("share", Ratio.KIND),
                        Column.in("cost", savings.get(0).cost().currency()))
                .rows(savings.stream()
                        .map(saving -> new Object[] {
                            saving.after().law().name(),
                            saving.baseline().words(),
                            saving.energy(),
                            saving.share(),
                            saving.cost()
                        })
                        .toList());
        return traced("Saved in the year, by basis", savings, table, Caution.ESTIMATE);
    }

    private static Shown regionHours(List<RegionHours> laws) {
        String title = "Hours in the operating region, by law";
        return traced(title, laws, LimitReports.hours(title, laws), Caution.ESTIMATE);
    }

    private static Shown traced(String title, List<? extends Traced> results, Table table, String... cautions) {
        Notes notes = results.stream().map(Traced::notes).reduce(Notes.NONE, Notes::and);
        Basis basis = results.stream().map(Traced::basis).reduce(Basis.NONE, Basis::and);
        return Composed.titled(title).table(table).shown(notes, basis, cautions);
    }
}

package headrace.report;

import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.Baseline;
import headrace.energy.LawYear;
import headrace.energy.StrategyComparison;
import headrace.energy.YearSaving;
import headrace.operation.OperatingPoint;
import headrace.problem.Refusal;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** How a comparison of control laws shows itself: the year, the part loads, and the savings with their bases. */
final class ComparisonReport {
    static final Ratio HALF = Ratio.percent(50);

    private static final List<Ratio> PART_LOADS =
            List.of(Ratio.percent(25), Ratio.percent(50), Ratio.percent(75), Ratio.percent(100));

    private ComparisonReport() {}

    static Shown of(StrategyComparison comparison) {
        return Composed.titled("Comparison of " + comparison.laws().size() + " control laws: "
                        + comparison.set().curve().name() + " for " + comparison.design())
                .line(verdict(comparison))
                .line("Load: " + comparison.profile() + ". Price: " + comparison.price() + ".")
                .line("Design wattage " + comparison.designPoint().wirePower() + " at "
                        + comparison.designPoint().speed() + ", drive included.")
                .table(year(comparison))
                .chart(ComparisonChart.year(comparison))
                .table(partLoads(comparison))
                .chart(ComparisonChart.overFlow(comparison))
                .table(ListReports.powerSavings("Saved at half of design flow, by basis", comparison.savingsAt(HALF)))
                .shown(comparison, Caution.ESTIMATE, Caution.RETUNING, Caution.SENSOR);
    }

    private static String verdict(StrategyComparison comparison) {
        LawYear least = comparison.laws().stream()
                .min(Comparator.comparing(LawYear::wireEnergy))
                .orElseThrow();
        List<String> against = comparison.yearSavings().stream()
                .filter(saving -> saving.after().law() == least.law())
                .map(saving -> saving.share() + " less than " + name(saving.baseline()))
                .toList();
        return "'" + least.law().name() + "' takes least: " + least.wireEnergy() + " a year, " + least.cost() + "; "
                + String.join(", ", against) + ".";
    }

    private static String name(Baseline baseline) {
        return switch (baseline) {
            case CONSTANT_SPEED -> "throttling at constant speed";
            case FIXED_DESIGN_SPEED -> "fixed design speed";
            case DESIGN_POWER -> "design power";
        };
    }

    private static Table year(StrategyComparison comparison) {
        String currency = comparison.price().perKilowattHour().currency();
        Table table = Table.of(
                "The year at the wire",
                Column.text("law"),
                Column.of("shaft energy", Energy.KIND),
                Column.of("wire energy", Energy.KIND),
                Column.in("cost", currency),
                Column.of("saved against throttling at constant speed", Ratio.KIND),
                Column.of("saved against fixed design speed", Ratio.KIND));
        for (LawYear law : comparison.laws()) {
            table = table.row(
                    law.law().name(),
                    law.shaftEnergy(),
                    law.wireEnergy(),
                    law.cost(),
                    share(comparison, law, Baseline.CONSTANT_SPEED),
                    share(comparison, law, Baseline.FIXED_DESIGN_SPEED));
        }
        return table;
    }

    private static Ratio share(StrategyComparison comparison, LawYear law, Baseline baseline) {
        return comparison.yearSavings().stream()
                .filter(saving -> saving.after() == law && saving.baseline() == baseline)
                .map(YearSaving::share)
                .findFirst()
                .orElse(null);
    }

    private static Table partLoads(StrategyComparison comparison) {
        Table table = Table.of(
                "Part loads",
                Column.text("law"),
                Column.of("share of design flow", Ratio.KIND),
                Column.of("flow", Flow.KIND),
                Column.of("speed", Speed.KIND),
                Column.of("head", Head.KIND),
                Column.of("shaft power", Power.KIND),
                Column.of("wire power", Power.KIND));
        for (LawYear law : comparison.laws()) {
            for (Ratio load : PART_LOADS) {
                Flow flow = comparison.design().flow().times(load);
                Optional<OperatingPoint> point = at(comparison, law.law(), flow);
                table = table.row(
                        law.law().name(),
                        load,
                        flow,
                        point.map(OperatingPoint::speed).orElse(null),
                        point.map(OperatingPoint::head).orElse(null),
                        point.map(OperatingPoint::shaftPower).orElse(null),
                        point.map(OperatingPoint::wirePower).orElse(null));
            }
        }
        return table;
    }

    /** Returns where the set runs, or nothing where its tested range does not reach. */
    static Optional<OperatingPoint> at(StrategyComparison comparison, ControlLaw law, Flow flow) {
        try {
            return Optional.of(SteadyState.of(law, comparison.set(), flow).point());
        } catch (Refusal beyondTest) {
            return Optional.empty();
        }
    }
}

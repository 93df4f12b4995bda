package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import headrace.rule.index.CirculatorEnergyIndex;
import headrace.rule.index.MinimumEfficiencyIndex;
import headrace.rule.index.PumpEnergyIndex;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;

/** How the energy indices show themselves: always as calculation aids. */
final class IndexReports {
    private static final List<String> CONSTANT_FLOWS = List.of("75 %", "100 %", "110 %");
    private static final List<String> VARIABLE_FLOWS = List.of("25 %", "50 %", "75 %", "100 %");
    private static final String AID = "A calculation aid, not a certified rating.";

    private IndexReports() {}

    static Shown minimumEfficiency(MinimumEfficiencyIndex index) {
        Table table = Table.of(
                "Efficiency at the three points",
                Column.text("point"),
                Column.of("flow", Flow.KIND),
                Column.of("efficiency", Ratio.KIND),
                Column.of("index 0.10 asks", Ratio.KIND),
                Column.of("index 0.40 asks", Ratio.KIND));
        for (MinimumEfficiencyIndex.Point point : index.points()) {
            table = table.row(point.name(), point.flow(), point.efficiency(), point.forTenth(), point.forForty());
        }
        String verdict = switch (index.reached()) {
            case BELOW_0_10 -> "Below index 0.10 at one of the points.";
            case AT_LEAST_0_10 -> "Index 0.10 is reached at each point, 0.40 is not.";
            case AT_LEAST_0_40 -> "Index 0.40 is reached at each point.";
        };
        return Composed.titled("Minimum efficiency index of the EU, " + index.type() + " pump")
                .line(verdict)
                .line(AID)
                .fact("type", index.type().words())
                .fact("stages", index.stages())
                .fact("specific speed (rpm, m³/s, m)", Numbers.print(index.specificSpeed()))
                .table(table)
                .shown(index, Caution.ESTIMATE);
    }

    static Shown circulator(CirculatorEnergyIndex index) {
        Table table = Table.of(
                "Readings along the control curve",
                Column.of("flow", Flow.KIND),
                Column.of("head", Head.KIND),
                Column.of("power from the wire", Power.KIND),
                Column.of("power as it counts", Power.KIND));
        for (int i = 0; i < index.readings().size(); i++) {
            CirculatorEnergyIndex.Reading each = index.readings().get(i);
            table = table.row(
                    each.flow(),
                    each.head(),
                    each.electricalPower(),
                    index.counted().get(i));
        }
        return Composed.titled("Circulator energy index of the EU: " + Numbers.print(index.index()))
                .line((index.index() <= CirculatorEnergyIndex.LIMIT ? "Within" : "Above") + " the limit of "
                        + CirculatorEnergyIndex.LIMIT + " since August 2015; the benchmark is "
                        + Numbers.print(CirculatorEnergyIndex.BENCHMARK) + ".")
                .line(AID)
                .fact("hydraulic power at 100 % flow", index.hydraulicPower())
                .fact("averaged power", index.average())
                .fact("power of the reference circulator", index.referencePower())
                .table(table)
                .shown(index, Caution.ESTIMATE);
    }

    static Shown pumpEnergy(PumpEnergyIndex index) {
        return Composed.titled("US pump energy index, 2016 procedure, " + index.type() + " pump")
                .line("At constant load " + Numbers.print(index.constantLoad()) + ", at variable load with a drive "
                        + Numbers.print(index.variableLoad()) + "; 1.00 is the most that is allowed.")
                .line(AID + " The formulas are from memory.")
                .fact("type", index.type().words())
                .fact(
                        "specific speed (rpm, gpm, ft)",
                        Numbers.print(index.standard().specificSpeed()))
                .fact("best efficiency of the standard pump", index.standard().efficiency())
                .fact("default motor", index.motorRated() + ", " + index.motorEfficiency() + " at full load")
                .fact("rating of the standard pump", index.standardRating())
                .fact("rating at constant load", index.constantRating())
                .fact("rating at variable load", index.variableRating())
                .table(constant(index))
                .table(variable(index))
                .shown(index, Caution.ESTIMATE);
    }

    private static Table constant(PumpEnergyIndex index) {
        Table table = Table.of(
                "Constant load",
                Column.text("flow"),
                Column.of("shaft power", Power.KIND),
                Column.of("wire power", Power.KIND),
                Column.of("standard shaft power", Power.KIND),
                Column.of("standard wire power", Power.KIND));
        PumpEnergyIndex.Loads loads = index.loads();
        for (int i = 0; i < CONSTANT_FLOWS.size(); i++) {
            table = table.row(
                    CONSTANT_FLOWS.get(i),
                    loads.constant().get(i),
                    loads.constantInput().get(i),
                    loads.standardShaft().get(i),
                    loads.standardInput().get(i));
        }
        return table;
    }

    private static Table variable(PumpEnergyIndex index) {
        Table table = Table.of("Variable load, with a drive", Column.text("flow"), Column.of("wire power", Power.KIND));
        for (int i = 0; i < VARIABLE_FLOWS.size(); i++) {
            table = table.row(
                    VARIABLE_FLOWS.get(i), index.loads().variableInput().get(i));
        }
        return table;
    }
}

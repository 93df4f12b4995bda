package headrace.report;

import headrace.circuit.BranchState;
import headrace.circuit.CircuitSolution;
import headrace.control.LoopOperation;
import headrace.control.SteadyState;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.circuit.CircuitReports;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.List;

/** How pump set, law and circuit show themselves where they settle. */
final class LoopReports {
    private LoopReports() {}

    static Shown operation(LoopOperation run) {
        CircuitSolution circuit = run.circuit();
        Composed composed = Composed.titled(
                        "'" + run.law().name() + "' runs the circuit at " + circuit.flow() + " and " + circuit.head())
                .line(verdict(circuit));
        run.pump().ifPresentOrElse(state -> pump(composed, state), () -> composed.line("The pump stands still."));
        CircuitReports.schematic(circuit).ifPresent(composed::chart);
        return composed.table(branches(circuit)).shown(run);
    }

    private static String verdict(CircuitSolution circuit) {
        List<String> starved = circuit.starvedBranches();
        if (starved.isEmpty()) {
            return "Every branch gets what is asked of it.";
        }
        BranchState worst = circuit.branch(starved.get(0));
        return (starved.size() == 1 ? "One branch gets" : starved.size() + " branches get") + " too little; worst is '"
                + worst.name() + "' with " + worst.delivered() + " of its demand, short by " + worst.missing() + ".";
    }

    private static void pump(Composed composed, SteadyState state) {
        composed.fact("head asked for", state.asked())
                .fact("speed", state.point().speed() + ", " + state.point().speedRatio() + " of rated");
        if (state.limit() != SteadyState.Limit.NONE) {
            composed.fact("limit reached", SetReports.words(state.limit().name()))
                    .fact("head above what is asked", state.excessHead());
        }
        composed.fact("pump efficiency", state.point().pumpEfficiency())
                .fact("shaft power", state.point().shaftPower())
                .fact("wire power", state.point().wirePower());
    }

    private static Table branches(CircuitSolution circuit) {
        return Table.of(
                        "Branches that serve a load",
                        Column.text("branch"),
                        Column.of("demand", Flow.KIND),
                        Column.of("flow", Flow.KIND),
                        Column.of("delivered", Ratio.KIND),
                        Column.of("head across", Head.KIND),
                        Column.of("valve opening", Ratio.KIND),
                        Column.of("missing head", Head.KIND))
                .rows(circuit.terminals().stream().map(LoopReports::row).toList());
    }

    private static Object[] row(BranchState state) {
        return new Object[] {
            state.name(),
            state.demand().orElseThrow(),
            state.flow(),
            state.delivered(),
            state.available(),
            state.opening().orElse(null),
            state.missing()
        };
    }
}

package headrace.report.circuit;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.circuit.Branch;
import headrace.circuit.BranchState;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.part.Part;
import headrace.circuit.part.valve.InstalledCharacteristic;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Caution;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How circuits show themselves: as a drawing, and as a table of their branches. */
public final class CircuitReports {
    private static final int STEPS = 200;
    private static final int MOST_BESIDE = 12;

    private CircuitReports() {}

    /** Shows a circuit. */
    public static Shown circuit(Circuit circuit) {
        Composed shown = Composed.titled(capital(circuit.toString()));
        Schematic.of(circuit).ifPresentOrElse(shown::chart, () -> shown.line(tooBig()));
        return shown.table(branches(circuit)).shown(circuit);
    }

    /** Shows how a circuit stands. */
    public static Shown solution(CircuitSolution solution) {
        Composed shown = Composed.titled("Circuit at " + solution);
        Schematic.of(solution).ifPresentOrElse(shown::chart, () -> shown.line(tooBig()));
        return shown.table(states(solution)).shown(solution, Caution.ESTIMATE);
    }

    /** Shows an installed characteristic. */
    public static Shown installed(InstalledCharacteristic installed) {
        return Composed.titled("Installed characteristic: " + installed)
                .fact("flow at half of the stroke", installed.flowAt(Ratio.of(0.5)))
                .fact("opening for half of the flow", installed.openingFor(Ratio.of(0.5)))
                .chart(chart(installed))
                .shown();
    }

    /** Returns how a circuit stands, drawn beside another result, unless it is so big that it would outweigh that. */
    public static Optional<Chart> schematic(CircuitSolution solution) {
        return solution.terminals().size() > MOST_BESIDE ? Optional.empty() : Schematic.of(solution);
    }

    private static String tooBig() {
        return "A drawing of more than " + Schematic.MOST_ROWS
                + " branches across would not be read; the table has them all.";
    }

    private static Table branches(Circuit circuit) {
        Table table = Table.of(
                "Branches",
                Column.text("branch"),
                Column.text("from"),
                Column.text("to"),
                Column.of("design flow", Flow.KIND),
                Column.text("parts"));
        List<Object[]> rows = new ArrayList<>();
        for (Branch branch : circuit.branches()) {
            rows.add(new Object[] {
                branch.name(),
                branch.from(),
                branch.to(),
                branch.design().orElse(null),
                String.join("; ", branch.parts().stream().map(Part::toString).toList())
            });
        }
        return table.rows(rows);
    }

    private static Table states(CircuitSolution solution) {
        Table table = Table.of(
                "Branches",
                Column.text("branch"),
                Column.of("demand", Flow.KIND),
                Column.of("flow", Flow.KIND),
                Column.of("delivered", Ratio.KIND),
                Column.of("head across", Head.KIND),
                Column.of("missing head", Head.KIND),
                Column.of("opening", Ratio.KIND));
        List<Object[]> rows = new ArrayList<>();
        for (BranchState state : solution.branches()) {
            boolean asked = state.demand().isPresent();
            rows.add(new Object[] {
                state.name(),
                state.demand().orElse(null),
                state.flow(),
                asked ? state.delivered() : null,
                state.available(),
                asked ? state.missing() : null,
                state.opening().orElse(null)
            });
        }
        return table.rows(rows);
    }

    private static Chart chart(InstalledCharacteristic installed) {
        double[] openings = new double[STEPS + 1];
        double[] flows = new double[STEPS + 1];
        double[] shares = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            double opening = (double) i / STEPS;
            openings[i] = 100 * opening;
            flows[i] = installed.flowAt(Ratio.of(opening)).toPercent();
            shares[i] = 100 * installed.characteristic().shareAt(opening);
        }
        String authority = Numbers.print(installed.authority().si());
        List<Mark> marks = List.of(
                Line.through(openings, flows).labelled("flow at an authority of " + authority),
                Line.through(openings, shares).in(Ink.GREY).broken(Dash.DASHED).labelled("Kv over Kvs of the valve"));
        return Chart.titled("Installed characteristic")
                .across(Axis.of("Opening of the valve", "%").from(0).to(100))
                .panel(Axis.of("Share of that when open", "%").from(0).to(100), marks)
                .caption("Constant head across the circuit; " + installed.characteristic() + ".")
                .build();
    }

    private static String capital(String sentence) {
        return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
    }
}

package headrace.report.circuit;

import headrace.chart.Chart;
import headrace.chart.mark.Diagram;
import headrace.chart.mark.Diagram.Rung;
import headrace.chart.mark.Diagram.Side;
import headrace.chart.mark.Diagram.Sign;
import headrace.chart.mark.Diagram.Upright;
import headrace.chart.mark.Ink;
import headrace.circuit.Branch;
import headrace.circuit.BranchState;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.part.DecouplerPipe;
import headrace.circuit.part.Part;
import headrace.circuit.part.Strainer;
import headrace.circuit.part.Throttling;
import headrace.circuit.part.coil.Coil;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.valve.BalancingValve;
import headrace.circuit.part.valve.BypassValve;
import headrace.circuit.part.valve.CheckValve;
import headrace.circuit.part.valve.FixedValve;
import headrace.circuit.part.valve.PressureIndependentValve;
import headrace.report.circuit.RowPlan.Span;
import headrace.units.Flow;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A circuit drawn: supply down the left, return down the right, a row for each branch between them, the pump on top.
 *
 * <p>Mains by which junctions are reached are the uprights; what closes a loop is a row that ends at the name of its
 * junction, where both its ends are on one side.
 */
final class Schematic {
    /** More rows than these are no drawing any more: an assumption of our own. */
    static final int MOST_ROWS = 60;

    private static final int MOST_BRANCHES = 5 * MOST_ROWS;

    private final Circuit circuit;
    private final Optional<CircuitSolution> solution;
    private final SidedJunctions sided;
    private final RowPlan rows;
    private final ColumnPlan columns;

    private Schematic(Circuit circuit, Optional<CircuitSolution> solution) {
        this.circuit = circuit;
        this.solution = solution;
        sided = new SidedJunctions(circuit);
        rows = new RowPlan(sided);
        columns = new ColumnPlan(sided, rows);
    }

    /** Returns the drawing; none of a circuit that is too big for one. */
    static Optional<Chart> of(Circuit circuit) {
        return small(circuit)
                ? new Schematic(circuit, Optional.empty()).chart("Circuit", "At the mains: their parts.")
                : Optional.empty();
    }

    /** Returns the drawing with what flows where; none of a circuit that is too big for one. */
    static Optional<Chart> of(CircuitSolution solution) {
        if (!small(solution.circuit())) {
            return Optional.empty();
        }
        return new Schematic(solution.circuit(), Optional.of(solution))
                .chart(
                        "Circuit at " + solution.flow() + " and " + solution.head(),
                        "At the mains: flow, and head above the suction of the pump at their end. At the branches: flow, head"
                                + " across the branch, opening of the valve.");
    }

    private static boolean small(Circuit circuit) {
        return circuit.branches().size() <= MOST_BRANCHES && circuit.terminals().size() <= MOST_ROWS;
    }

    private Optional<Chart> chart(String title, String caption) {
        if (rows.branches().size() > MOST_ROWS) {
            return Optional.empty();
        }
        List<Rung> rungs = new ArrayList<>();
        rungs.add(pump());
        rows.branches().forEach(branch -> rungs.add(rung(branch)));
        List<Upright> uprights = new ArrayList<>();
        for (String junction : circuit.junctions()) {
            if (!rows.has(junction)) {
                continue;
            }
            upright(junction).ifPresent(uprights::add);
            reach(junction).ifPresent(uprights::add);
        }
        return Optional.of(Chart.titled(title)
                .diagram(new Diagram(rungs, uprights))
                .caption(caption)
                .build());
    }

    /** The pump, which delivers to the left, and what the whole flow passes before it. */
    private Rung pump() {
        List<String> names = new ArrayList<>(List.of("pump"));
        List<String> details = new ArrayList<>();
        solution.ifPresent(found -> details.add(found.flow() + ", " + found.head()));
        List<Sign> signs = new ArrayList<>(List.of(Sign.DRIVE));
        for (Branch branch : sided.plant()) {
            names.add(branch.name());
            signs.addAll(signs(branch, true));
            solution.ifPresent(found -> details.add(
                    branch.name() + " " + found.branch(branch.name()).available()));
        }
        return new Rung(
                columns.column(circuit.discharge()),
                columns.column(sided.roots(Side.RIGHT).get(0)),
                String.join(", ", names),
                String.join("; ", details),
                signs,
                Ink.BLACK,
                false);
    }

    private Rung rung(Branch branch) {
        Optional<BranchState> state = solution.map(found -> found.branch(branch.name()));
        boolean back = state.map(found -> found.flow().si() < 0).orElse(false);
        Ink ink = state.map(BranchState::isStarved).orElse(false) ? Ink.VERMILION : Ink.BLACK;
        String detail = state.map(Schematic::detail).orElseGet(() -> asked(branch));
        if (rows.isOneSided(branch)) {
            return oneSided(branch, detail, back);
        }
        boolean turned = sided.side(branch.from()) == Side.RIGHT;
        return new Rung(
                columns.column(turned ? branch.to() : branch.from()),
                columns.column(turned ? branch.from() : branch.to()),
                branch.name(),
                detail,
                signs(branch, turned),
                ink,
                turned == back);
    }

    /** A branch that closes a loop ends in the open, and says where it leads. */
    private Rung oneSided(Branch branch, String detail, boolean back) {
        String here = rows.attached(branch);
        boolean left = sided.side(here) == Side.LEFT;
        boolean begins = branch.from().equals(here);
        String leads = "from " + branch.from() + " to " + branch.to();
        return new Rung(
                left ? columns.column(here) : -1,
                left ? -1 : columns.column(here),
                branch.name(),
                detail.isEmpty() ? leads : detail + "; " + leads,
                signs(branch, begins != left),
                Ink.BLACK,
                (begins == left) != back);
    }

    private static String detail(BranchState state) {
        List<String> words = new ArrayList<>();
        words.add(state.flow().toString()
                + (state.isStarved() ? " of " + state.demand().orElseThrow() : ""));
        words.add(state.available().toString());
        state.opening().ifPresent(opening -> words.add("valve " + opening));
        return String.join(", ", words);
    }

    private static String asked(Branch branch) {
        return branch.design().map(Flow::toString).orElse("");
    }

    private static List<Sign> signs(Branch branch, boolean turned) {
        List<Sign> all =
                new ArrayList<>(branch.parts().stream().flatMap(Schematic::sign).toList());
        if (turned) {
            Collections.reverse(all);
        }
        return all;
    }

    private static Stream<Sign> sign(Part part) {
        if (part instanceof Pipe || part instanceof DecouplerPipe) {
            return Stream.of();
        }
        if (part instanceof Coil) {
            return Stream.of(Sign.HEAT);
        }
        if (part instanceof PressureIndependentValve) {
            return Stream.of(Sign.HOLD);
        }
        if (part instanceof Throttling) {
            return Stream.of(Sign.THROTTLE);
        }
        if (part instanceof FixedValve || part instanceof BalancingValve) {
            return Stream.of(Sign.SET);
        }
        if (part instanceof CheckValve || part instanceof BypassValve) {
            return Stream.of(Sign.ONE_WAY);
        }
        return Stream.of(Sign.RESIST);
    }

    /** The main to a junction, from the one before it. */
    private Optional<Upright> upright(String junction) {
        Branch main = sided.main(junction);
        if (main == null) {
            return Optional.empty();
        }
        String parent = main.from().equals(junction) ? main.to() : main.from();
        return Optional.of(new Upright(
                sided.side(junction),
                columns.column(junction),
                columns.column(parent),
                columns.begin(junction, parent),
                end(junction, parent),
                note(main, junction)));
    }

    private int end(String junction, String parent) {
        return rows.span(junction).nearest(columns.begin(junction, parent));
    }

    /** A junction at which several branches begin reaches over their rows. */
    private Optional<Upright> reach(String junction) {
        Span span = rows.span(junction);
        int column = columns.column(junction);
        return span.first() == span.last()
                ? Optional.empty()
                : Optional.of(new Upright(sided.side(junction), column, column, span.first(), span.last(), List.of()));
    }

    private List<String> note(Branch main, String junction) {
        if (solution.isPresent()) {
            CircuitSolution found = solution.get();
            double flow = Math.abs(found.branch(main.name()).flow().si());
            List<String> note = new ArrayList<>(SidedJunctions.hasPump(main) ? List.of(main.name()) : List.of());
            note.add(Flow.cubicMetresPerSecond(flow).toString());
            note.add(found.headAt(junction).toString());
            return note;
        }
        return main.parts().stream()
                .map(part -> part instanceof Pipe pipe ? pipe.length() + " of " + pipe.bore() : kind(part))
                .toList();
    }

    private static String kind(Part part) {
        return part instanceof Strainer ? "strainer" : part.name().replaceFirst(" of .*", "");
    }
}

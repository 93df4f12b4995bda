package headrace.circuit.answer;

import headrace.circuit.Branch;
import headrace.circuit.BranchState;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.CircuitSolution;
import headrace.circuit.Closing;
import headrace.circuit.Demands;
import headrace.circuit.LeastFlow;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.List;

/**
 * The least head at the pump with which a circuit serves a load pattern, and the branch that decides it: its index
 * circuit.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads of the liquid at the pump.
 *   <dt>Limits
 *   <dd>Something is asked of at least one terminal.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code FLOW_OUTSIDE_DEMANDS} if nothing is asked; as
 *       {@link headrace.circuit.CircuitSolver}.
 *   <dt>Source
 *   <dd>The index circuit is the one without excess head: textbook knowledge.
 * </dl>
 *
 * @param solution how the circuit stands at that head
 * @param index the branch that decides
 * @param branches what each branch that is asked for something needs of what it has
 */
public record HeadNeed(CircuitSolution solution, String index, List<Need> branches) implements Traced {
    /** Less than this share of the head at the pump is no excess: the solve is no more exact. */
    private static final double ROUNDING = 1e-9;

    /**
     * What a branch needs.
     *
     * @param name its name
     * @param demand what is asked of it
     * @param available the head across it
     * @param needed what it takes with its valve fully open
     */
    public record Need(String name, Flow demand, Head available, Head needed) {
        /** Returns the head that it has too much: what its valve has to take away. */
        public Head excess() {
            return available.minus(needed);
        }
    }

    /** Keeps the list as it is now. */
    public HeadNeed {
        branches = List.copyOf(branches);
    }

    /** Returns what a circuit needs for its design flows. */
    public static HeadNeed of(Circuit circuit) {
        return of(circuit, circuit.designDemands());
    }

    /** Returns what a circuit needs for a load pattern. */
    public static HeadNeed of(Circuit circuit, Demands demands) {
        if (demands.total().si() == 0) {
            throw new Refusal(
                    CircuitProblem.FLOW_OUTSIDE_DEMANDS,
                    "Asked for the head that a " + circuit + " needs while nothing is asked of it",
                    "A head is needed where a terminal is asked for more than 0",
                    "Ask at least one branch for a flow");
        }
        CircuitSolution solution = LeastFlow.solve(circuit, demands, Closing.neediestValve(Ratio.of(1)));
        double nothing = ROUNDING * Math.abs(solution.head().metres());
        List<Need> needs = solution.terminals().stream()
                .filter(state -> state.demand().orElseThrow().si() > 0)
                .map(state -> need(state, circuit, nothing))
                .toList();
        String index = needs.stream()
                .min((one, other) -> one.excess().compareTo(other.excess()))
                .orElseThrow()
                .name();
        return new HeadNeed(solution, index, needs);
    }

    private static Need need(BranchState state, Circuit circuit, double nothing) {
        Flow demand = state.demand().orElseThrow();
        Head needed = loss(state.branch(), demand, circuit);
        boolean same = Math.abs(state.available().minus(needed).metres()) <= nothing;
        return new Need(state.name(), demand, same ? needed : state.available(), needed);
    }

    /** Returns what a branch takes at a flow, its valve fully open. */
    static Head loss(Branch branch, Flow flow, Circuit circuit) {
        return Head.metres(branch.parts().stream()
                .mapToDouble(part -> part.in(circuit.liquid()).headMetres(flow.si()))
                .sum());
    }

    /** Returns the head at the pump. */
    public Head head() {
        return solution.head();
    }

    /** Returns the total flow. */
    public Flow flow() {
        return solution.flow();
    }

    /** Returns what stands against a head that was specified. */
    public HeadMargin against(Head specified) {
        return new HeadMargin(this, specified);
    }

    @Override
    public Notes notes() {
        return solution.notes();
    }

    @Override
    public Basis basis() {
        return solution.basis();
    }

    @Override
    public String toString() {
        return head() + " for " + flow() + "; index circuit: " + index;
    }
}

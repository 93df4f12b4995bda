package headrace.circuit;

import headrace.circuit.solve.LinkState;
import headrace.circuit.solve.NetworkSolution;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a circuit stands: what flows where, at which heads.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads of the liquid, above the suction of the pump.
 *   <dt>Limits
 *   <dd>The equations hold to 1e-9 of the design flow and head where {@link #converged} says so.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code UNKNOWN_BRANCH} or {@code UNKNOWN_JUNCTION}.
 *   <dt>Source
 *   <dd>As {@link CircuitSolver}.
 * </dl>
 *
 * @param circuit the circuit
 * @param demands what was asked of its terminals
 * @param flow the flow through the pump
 * @param head the head at the pump
 * @param branches how each branch stands, in the order of the circuit
 * @param heads the head at each junction
 * @param residuals how exactly the equations hold; the worst link is the place of a branch in the circuit
 * @param iterations how many linear systems were solved
 * @param converged whether the equations hold
 * @param notes starved branches, limits of parts that were touched
 */
public record CircuitSolution(
        Circuit circuit,
        Demands demands,
        Flow flow,
        Head head,
        List<BranchState> branches,
        Map<String, Head> heads,
        NetworkSolution.Residuals residuals,
        int iterations,
        boolean converged,
        Notes notes)
        implements Traced {
    /** Copies the lists. */
    public CircuitSolution {
        branches = List.copyOf(branches);
        heads = Collections.unmodifiableMap(new LinkedHashMap<>(heads));
    }

    static CircuitSolution of(CircuitNetwork compiled, Demands demands, double[] asked, NetworkSolution found) {
        Circuit circuit = compiled.circuit;
        List<BranchState> states = new ArrayList<>();
        for (int i = 0; i < circuit.branches().size(); i++) {
            states.add(state(compiled, i, asked[i], found));
        }
        Map<String, Head> heads = new LinkedHashMap<>();
        for (String junction : circuit.junctions()) {
            heads.put(junction, Head.metres(found.headAt(compiled.node(junction))));
        }
        return new CircuitSolution(
                circuit,
                demands,
                Flow.cubicMetresPerSecond(found.pump().cubicMetresPerSecond()),
                Head.metres(found.pump().metres()),
                states,
                heads,
                residuals(compiled, found.residuals()),
                found.iterations(),
                found.converged(),
                CircuitNotes.of(circuit, states));
    }

    /** The worst link as a branch. */
    private static NetworkSolution.Residuals residuals(CircuitNetwork compiled, NetworkSolution.Residuals off) {
        return new NetworkSolution.Residuals(
                off.energyMetres(),
                compiled.branchOf(off.worstLink()),
                off.massCubicMetresPerSecond(),
                off.closingMetres());
    }

    private static BranchState state(CircuitNetwork compiled, int i, double asked, NetworkSolution found) {
        Branch branch = compiled.circuit.branches().get(i);
        double flow = found.flow(i) + (compiled.beyond(i) >= 0 ? found.flow(compiled.beyond(i)) : 0);
        double available = found.headAt(compiled.node(branch.from())) - found.headAt(compiled.node(branch.to()));
        boolean isShort = branch.isTerminal() && asked > 0 && found.state(i) != LinkState.DELIVERING;
        double missing = isShort ? Math.max(0, compiled.needed(i, asked, 1) - available) : 0;
        return new BranchState(
                branch,
                branch.isTerminal() ? Optional.of(Flow.cubicMetresPerSecond(asked)) : Optional.empty(),
                Flow.cubicMetresPerSecond(flow),
                Head.metres(available),
                compiled.opening(i, flow, available).map(Ratio::of),
                Head.metres(missing),
                found.state(i));
    }

    /**
     * Returns how a branch stands.
     *
     * @throws Refusal with {@code UNKNOWN_BRANCH}
     */
    public BranchState branch(String name) {
        return branches.stream()
                .filter(state -> state.name().equals(name))
                .findFirst()
                .orElseThrow(() -> Circuit.unknown(name, Circuit.names(circuit.branches())));
    }

    /**
     * Returns the head at a junction.
     *
     * @throws Refusal with {@code UNKNOWN_JUNCTION}
     */
    public Head headAt(String junction) {
        Head head = heads.get(junction);
        if (head == null) {
            throw Circuit.unknownJunction(junction, circuit.junctions());
        }
        return head;
    }

    /** Returns this solution with more to be said about it. */
    CircuitSolution with(Notes more) {
        return new CircuitSolution(
                circuit, demands, flow, head, branches, heads, residuals, iterations, converged, notes.and(more));
    }

    /** Returns the terminals, in the order of the circuit. */
    public List<BranchState> terminals() {
        return branches.stream().filter(state -> state.demand().isPresent()).toList();
    }

    /** Returns the names of the terminals that get less than is asked of them, the worst first. */
    public List<String> starvedBranches() {
        return terminals().stream()
                .filter(BranchState::isStarved)
                .sorted(Comparator.comparingDouble(state -> state.delivered().value()))
                .map(BranchState::name)
                .toList();
    }

    /** Returns the branches out of use: nothing is asked of them, or they lead nowhere. */
    public List<String> removedBranches() {
        return branches.stream()
                .filter(state -> state.state() == LinkState.REMOVED)
                .map(BranchState::name)
                .toList();
    }

    /** Returns the name of the branch whose law is met least exactly. */
    public String worstBranch() {
        return circuit.branches().get(residuals.worstLink()).name();
    }

    @Override
    public Basis basis() {
        return circuit.basis()
                .with("flows of the circuit by Newton's method to 1e-9 of design flow and head, in " + iterations
                        + " steps");
    }

    @Override
    public String toString() {
        List<String> starved = starvedBranches();
        return flow + " at " + head + (starved.isEmpty() ? ", every demand met" : ", too little at " + starved.get(0));
    }
}

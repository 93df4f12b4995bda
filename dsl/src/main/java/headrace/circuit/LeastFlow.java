package headrace.circuit;

import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.problem.Refusal;
import headrace.units.Flow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Finds how a circuit stands when its minimum-flow valves bypass what the pump lacks of its least flow.
 *
 * <p>Each such valve is asked for {@code max(0, Q_least − Q)}, where Q is what the pump moves beside it; that is asked
 * anew until it stays, since a bypass takes head from the terminals.
 *
 * <dl>
 *   <dt>Units
 *   <dd>As {@link Circuit}.
 *   <dt>Limits
 *   <dd>Each valve keeps the flow of the one pump of the circuit. Without such a valve it is the plain solve. Where
 *       nothing is asked of any other terminal the valve keeps its whole flow.
 *   <dt>Errors
 *   <dd>As {@link CircuitSolver#solve}; {@link Refusal} with {@code CIRCUIT_NOT_SOLVED} if the bypassed flow does not
 *       settle.
 *   <dt>Source
 *   <dd>Balance of volume.
 * </dl>
 */
public final class LeastFlow {
    private static final int MOST_ROUNDS = 50;

    /** The bypassed flow has settled within this share of the least flow. */
    private static final double SETTLED = 1e-9;

    private LeastFlow() {}

    /** Returns how a circuit stands with these demands; those of minimum-flow valves are found. */
    public static CircuitSolution solve(Circuit circuit, Demands demands, Closing closing) {
        CircuitSolver solver = CircuitSolver.of(circuit);
        return solve(circuit, demands, asked -> solver.solve(asked, closing), found -> found);
    }

    /**
     * Returns what stands with these demands, however it is solved; those of minimum-flow valves are found.
     *
     * @param stands solves for demands
     * @param in the circuit in what was found
     */
    public static <T> T solve(
            Circuit circuit, Demands demands, Function<Demands, T> stands, Function<T, CircuitSolution> in) {
        List<Branch> bypasses = bypasses(circuit);
        Demands asked = demands;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            T found = stands.apply(asked);
            Demands next = asked;
            boolean settled = true;
            for (Branch bypass : bypasses) {
                MinimumFlowValve valve = (MinimumFlowValve) bypass.valve().orElseThrow();
                CircuitSolution solution = in.apply(found);
                Flow bypassed = solution.branch(bypass.name()).flow();
                Flow wanted = valve.demandBeside(solution.flow().minus(bypassed));
                Flow before = asked.flows().getOrDefault(bypass.name(), Flow.ZERO);
                settled &= Math.abs(wanted.si() - before.si())
                        <= SETTLED * valve.least().si();
                next = asked(next, bypass.name(), wanted);
            }
            if (settled) {
                return found;
            }
            asked = next;
        }
        throw new Refusal(
                CircuitProblem.CIRCUIT_NOT_SOLVED,
                "Asked how a circuit stands whose minimum-flow valve bypasses what the pump lacks",
                "After " + MOST_ROUNDS + " rounds the bypassed flow had not settled",
                "Ask the bypass for a flow of its own, and see whether two such valves work against each other");
    }

    /** Returns the branches with a minimum-flow valve. */
    public static List<Branch> bypasses(Circuit circuit) {
        return circuit.terminals().stream()
                .filter(branch -> branch.valve().orElse(null) instanceof MinimumFlowValve)
                .toList();
    }

    /** Returns demands without those of minimum-flow valves: what serves a load. */
    public static Demands loads(Circuit circuit, Demands demands) {
        Demands loads = demands;
        for (Branch bypass : bypasses(circuit)) {
            loads = asked(loads, bypass.name(), Flow.ZERO);
        }
        return loads;
    }

    private static Demands asked(Demands demands, String name, Flow flow) {
        Map<String, Flow> all = new LinkedHashMap<>(demands.flows());
        all.put(name, flow);
        return new Demands(all);
    }
}

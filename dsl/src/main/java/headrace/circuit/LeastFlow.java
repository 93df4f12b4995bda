package headrace.circuit;

import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.problem.Refusal;
import headrace.units.Flow;

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
 *   <dd>Each valve keeps the flow of the one pump of the circuit. Without such a valve it is the plain solve.
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
        Demands asked = demands;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            CircuitSolution solution = circuit.solve(asked, closing);
            Demands next = asked;
            boolean settled = true;
            for (Branch branch : circuit.terminals()) {
                if (branch.valve().orElse(null) instanceof MinimumFlowValve valve) {
                    Flow bypassed = solution.branch(branch.name()).flow();
                    Flow wanted = valve.demandBeside(solution.flow().minus(bypassed));
                    Flow before = asked.flows().get(branch.name());
                    settled &= Math.abs(wanted.si() - before.si())
                            <= SETTLED * valve.least().si();
                    next = next.with(branch.name(), wanted);
                }
            }
            if (settled) {
                return solution;
            }
            asked = next;
        }
        throw new Refusal(
                CircuitProblem.CIRCUIT_NOT_SOLVED,
                "Asked how a circuit stands whose minimum-flow valve bypasses what the pump lacks",
                "After " + MOST_ROUNDS + " rounds the bypassed flow had not settled",
                "Ask the bypass for a flow of its own, and see whether two such valves work against each other");
    }
}

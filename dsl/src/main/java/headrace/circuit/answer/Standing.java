package headrace.circuit.answer;

import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Closing;
import headrace.circuit.Demands;
import headrace.circuit.LeastFlow;
import headrace.units.Head;

/** How a circuit stands when other demands are made of it, all else the same: at one head, or under a law. */
@FunctionalInterface
public interface Standing {
    /** Returns how it stands with these demands. */
    CircuitSolution with(Demands demands);

    /** Returns how a circuit stands at one head at its pump. */
    static Standing at(Circuit circuit, Head head) {
        CircuitSolver solver = CircuitSolver.of(circuit);
        Closing closing = Closing.head(head);
        return demands -> LeastFlow.solve(circuit, demands, asked -> solver.solve(asked, closing), found -> found);
    }
}

package headrace.control;

import headrace.circuit.CircuitSolution;
import headrace.circuit.solve.LoopView;
import java.util.List;

/** Lets a law look once more at a circuit that was solved. */
record SeenSolution(CircuitSolution solution, List<String> junctions) implements LoopView {
    SeenSolution(CircuitSolution solution) {
        this(solution, solution.circuit().junctions());
    }

    @Override
    public double flow() {
        return solution.flow().si();
    }

    @Override
    public double head() {
        return solution.head().metres();
    }

    @Override
    public double flow(int link) {
        return solution.branches().get(link).flow().si();
    }

    @Override
    public double headAt(int node) {
        return solution.headAt(junctions.get(node)).metres();
    }

    @Override
    public double headAcross(int link) {
        return solution.branches().get(link).available().metres();
    }
}

package headrace.circuit.band;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Demands;
import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.NetworkSolution;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Finds both edges of a head band at one total flow after another. */
final class BandSearch {
    private static final double WHOLE = 1 - 1e-12;

    /** How many exchanges are tried for an edge that is searched. */
    private static final int TRIES = 400;

    private final CircuitSolver solver;
    private final Circuit circuit;
    private final List<Branch> terminals;
    private final double[] most;
    private final double total;
    private final Optional<MainTrees> trees;
    private final boolean searched;
    private final Integer[][] order;

    BandSearch(CircuitSolver solver, Demands demands) {
        this.solver = solver;
        circuit = solver.circuit();
        solver.ask(demands);
        terminals = circuit.terminals();
        most = terminals.stream()
                .mapToDouble(branch -> solver.bare().asked(solver.link(branch.name())))
                .toArray();
        total = Arrays.stream(most).sum();
        trees = MainTrees.of(solver);
        searched = trees.isEmpty() || !trees.get().runAlong();
        order = new Integer[terminals.size()][];
        for (int j = 0; j < order.length; j++) {
            order[j] = order(j);
        }
    }

    /**
     * The order in which terminals are filled that makes the need of one great: itself, then those it shares most with.
     */
    private Integer[] order(int j) {
        Comparator<Integer> nearest = trees.isPresent()
                ? Comparator.comparingInt(
                        i -> i == j ? Integer.MIN_VALUE : -trees.get().shared(j, i))
                : Comparator.comparingInt(i -> Math.abs(i - j));
        return IntStream.range(0, most.length).boxed().sorted(nearest).toArray(Integer[]::new);
    }

    double total() {
        return total;
    }

    boolean isSearched() {
        return searched;
    }

    BandPoint at(double flow) {
        return new BandPoint(Flow.cubicMetresPerSecond(flow), least(flow), greatest(flow));
    }

    /** The head at which the circuit takes this much with every valve open or at its demand. */
    private BandEdge least(double flow) {
        askAll(most);
        double slope = solver.bare().network().scale().metres()
                / solver.bare().network().scale().cubicMetresPerSecond();
        ClosingLaw law =
                flow >= total * WHOLE ? solver.neediestValve(1) : loop -> loop.head() + slope * (flow - loop.flow());
        NetworkSolution found = solver.solve(law);
        double[] pattern = new double[most.length];
        for (int j = 0; j < pattern.length; j++) {
            pattern[j] = found.flow(solver.link(terminals.get(j).name()));
        }
        return edge(needed(pattern), pattern, decides(pattern));
    }

    private BandEdge greatest(double flow) {
        double[] best = null;
        double metres = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < most.length; j++) {
            if (most[j] > 0) {
                double[] pattern = filled(order[j], flow);
                double need = trees.isPresent() ? trees.get().need(j, pattern) : needed(pattern);
                if (need > metres) {
                    metres = need;
                    best = pattern;
                }
            }
        }
        if (searched) {
            best = improved(best);
            metres = needed(best);
        }
        return edge(metres, best, decides(best));
    }

    private double[] filled(Integer[] in, double flow) {
        double[] pattern = new double[most.length];
        double left = flow;
        for (int i : in) {
            pattern[i] = Math.min(most[i], left);
            left -= pattern[i];
        }
        return pattern;
    }

    /** Moves flow between two terminals, as far as it goes, while that makes the need greater. */
    private double[] improved(double[] start) {
        double[] best = start;
        double metres = needed(start);
        int tries = 0;
        boolean better = true;
        while (better && tries < TRIES) {
            better = false;
            for (int a = 0; a < most.length && tries < TRIES; a++) {
                for (int b = 0; b < most.length && tries < TRIES; b++) {
                    double moved = a == b ? 0 : Math.min(best[a], most[b] - best[b]);
                    if (moved > 0) {
                        double[] other = best.clone();
                        other[a] -= moved;
                        other[b] += moved;
                        double need = needed(other);
                        tries++;
                        if (need > metres * (1 + 1e-12)) {
                            metres = need;
                            best = other;
                            better = true;
                        }
                    }
                }
            }
        }
        return best;
    }

    /** Returns the head in m at the pump that a pattern needs: its neediest terminal stands fully open. */
    private double needed(double[] pattern) {
        if (trees.isPresent()) {
            double need = Double.NEGATIVE_INFINITY;
            for (int j = 0; j < pattern.length; j++) {
                need = pattern[j] > 0 ? Math.max(need, trees.get().need(j, pattern)) : need;
            }
            return need;
        }
        askAll(pattern);
        return solver.solve(solver.neediestValve(1)).pump().metres();
    }

    private int decides(double[] pattern) {
        askAll(pattern);
        NetworkSolution found = solver.solve(solver.neediestValve(1));
        int least = 0;
        double spare = Double.POSITIVE_INFINITY;
        for (int j = 0; j < pattern.length; j++) {
            Branch branch = terminals.get(j);
            double across = found.headAt(solver.node(branch.from())) - found.headAt(solver.node(branch.to()));
            double left = across - solver.law(solver.link(branch.name())).headMetres(pattern[j]);
            if (pattern[j] > 0 && left < spare) {
                spare = left;
                least = j;
            }
        }
        return least;
    }

    private BandEdge edge(double metres, double[] pattern, int decides) {
        Map<String, Flow> flows = new LinkedHashMap<>();
        for (int j = 0; j < pattern.length; j++) {
            flows.put(terminals.get(j).name(), Flow.cubicMetresPerSecond(pattern[j]));
        }
        return new BandEdge(
                Head.metres(metres), new Demands(flows), terminals.get(decides).name());
    }

    private void askAll(double[] pattern) {
        double[] all = new double[circuit.branches().size()];
        for (int j = 0; j < pattern.length; j++) {
            all[solver.link(terminals.get(j).name())] = pattern[j];
        }
        solver.ask(all);
    }
}

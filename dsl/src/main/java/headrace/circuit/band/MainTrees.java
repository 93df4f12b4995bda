package headrace.circuit.band;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolver;
import headrace.circuit.part.LinkLaw;
import headrace.work.Work;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Mains that are two trees, one from the discharge and one from the suction, with terminals between them: the flow in
 * each main follows from the flows of the terminals alone.
 */
final class MainTrees {
    /** One step of a way from the pump to a terminal. */
    private record Step(int branch, boolean forward) {}

    private final List<LinkLaw> laws = new ArrayList<>();
    private final List<List<Step>> supply = new ArrayList<>();
    private final List<List<Step>> back = new ArrayList<>();
    private final LinkLaw[] own;

    /** For terminals j and i: how many steps of its way j shares with i, on the supply side and on the return side. */
    private final int[][] sharedSupply;

    private final int[][] sharedBack;

    private MainTrees(CircuitSolver solver, Ways fromDischarge, Ways fromSuction) {
        Circuit circuit = solver.circuit();
        for (int l = 0; l < circuit.branches().size(); l++) {
            laws.add(solver.law(l));
        }
        List<Branch> terminals = circuit.terminals();
        int n = terminals.size();
        own = new LinkLaw[n];
        for (int j = 0; j < n; j++) {
            supply.add(fromDischarge.to(terminals.get(j).from()));
            back.add(fromSuction.to(terminals.get(j).to()));
            own[j] = solver.law(solver.link(terminals.get(j).name()));
        }
        sharedSupply = shared(supply);
        sharedBack = shared(back);
    }

    /** Returns the trees of a circuit, or nothing if its mains are no two trees. */
    static Optional<MainTrees> of(CircuitSolver solver) {
        Circuit circuit = solver.circuit();
        Ways discharge = new Ways(circuit, circuit.discharge(), true);
        Ways suction = new Ways(circuit, circuit.suction(), false);
        Set<String> both = new HashSet<>(discharge.steps.keySet());
        both.retainAll(suction.steps.keySet());
        boolean trees = discharge.isTree && suction.isTree && both.isEmpty();
        for (Branch branch : circuit.terminals()) {
            trees &= discharge.steps.containsKey(branch.from()) && suction.steps.containsKey(branch.to());
        }
        return trees ? Optional.of(new MainTrees(solver, discharge, suction)) : Optional.empty();
    }

    /**
     * Returns whether, seen from every terminal, the one that shares more of its supply shares no less of its return:
     * then filling in that order is the worst for it.
     */
    boolean runAlong() {
        for (int j = 0; j < own.length; j++) {
            Work.poll();
            for (int a = 0; a < own.length; a++) {
                for (int b = 0; b < own.length; b++) {
                    if (sharedSupply[j][a] < sharedSupply[j][b] && sharedBack[j][a] > sharedBack[j][b]) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** Returns how much of its way terminal j shares with terminal i. */
    int shared(int j, int i) {
        return sharedSupply[j][i] + sharedBack[j][i];
    }

    /** Returns the head in m at the pump that terminal j needs when the terminals take given flows in m³/s. */
    double need(int j, double[] flows) {
        return lost(supply.get(j), sharedSupply[j], flows, 1)
                + lost(back.get(j), sharedBack[j], flows, -1)
                + own[j].headMetres(flows[j]);
    }

    /** Adds the flows up from the far end of a way, and with them the heads. */
    private double lost(List<Step> way, int[] shared, double[] flows, int sign) {
        double[] leaving = new double[way.size() + 1];
        for (int i = 0; i < flows.length; i++) {
            leaving[shared[i]] += flows[i];
        }
        double q = 0;
        double sum = 0;
        for (int s = way.size() - 1; s >= 0; s--) {
            q += leaving[s + 1];
            int direction = way.get(s).forward() ? sign : -sign;
            sum += direction * laws.get(way.get(s).branch()).headMetres(direction * q);
        }
        return sum;
    }

    private static int[][] shared(List<List<Step>> ways) {
        int n = ways.size();
        int[][] all = new int[n][n];
        for (int j = 0; j < n; j++) {
            Work.poll();
            for (int i = 0; i < n; i++) {
                int most = Math.min(ways.get(j).size(), ways.get(i).size());
                int s = 0;
                while (s < most && ways.get(j).get(s).equals(ways.get(i).get(s))) {
                    s++;
                }
                all[j][i] = s;
            }
        }
        return all;
    }

    /** The ways along mains from one side of the pump. */
    private static final class Ways {
        private final Map<String, List<Step>> steps = new HashMap<>();
        private boolean isTree = true;

        Ways(Circuit circuit, String start, boolean outwards) {
            Map<String, List<Integer>> at = new HashMap<>();
            for (int l = 0; l < circuit.branches().size(); l++) {
                Branch branch = circuit.branches().get(l);
                if (!branch.isTerminal()) {
                    at.computeIfAbsent(branch.from(), name -> new ArrayList<>()).add(l);
                    at.computeIfAbsent(branch.to(), name -> new ArrayList<>()).add(l);
                    isTree &= branch.limiter().isEmpty();
                }
            }
            steps.put(start, List.of());
            Deque<String> open = new ArrayDeque<>(List.of(start));
            Set<Integer> used = new HashSet<>();
            while (!open.isEmpty()) {
                String here = open.remove();
                for (int l : at.getOrDefault(here, List.of())) {
                    if (!used.add(l)) {
                        continue;
                    }
                    Branch branch = circuit.branches().get(l);
                    boolean forward = branch.from().equals(here);
                    String there = forward ? branch.to() : branch.from();
                    isTree &= !branch.isOneWay() || forward == outwards;
                    List<Step> way = new ArrayList<>(steps.get(here));
                    way.add(new Step(l, forward));
                    if (steps.putIfAbsent(there, way) == null) {
                        open.add(there);
                    } else {
                        isTree = false;
                    }
                }
            }
        }

        List<Step> to(String junction) {
            return steps.get(junction);
        }
    }
}

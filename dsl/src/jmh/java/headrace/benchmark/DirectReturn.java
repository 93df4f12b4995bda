package headrace.benchmark;

import headrace.circuit.part.SquareLaw;
import headrace.circuit.solve.HeadSource;
import headrace.circuit.solve.Link;
import headrace.circuit.solve.LinkState;
import headrace.circuit.solve.Network;
import headrace.circuit.solve.NetworkSolution;
import headrace.circuit.solve.NetworkSolver;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** W5: branches along a direct-return main, each delivering its demand or standing open, under a law of flow. */
final class DirectReturn implements Workload {
    private static final double DESIGN_METRES = 13.5;
    private static final double MINIMUM_METRES = 0.4 * DESIGN_METRES;

    private final int branches;
    private final int cases;
    private final String way;
    private final double[][] demand;
    private final NetworkSolver solver;
    private final NetworkSolution[] solutions;
    private final HeadSource law;

    DirectReturn(int branches, int cases, String way) {
        this.branches = branches;
        this.cases = cases;
        this.way = way;
        double[] design = new double[branches];
        double[] total = new double[branches];
        for (int j = branches - 1; j >= 0; j--) {
            design[j] = 3 + 2 * Inputs.uniform(501, j);
            total[j] = design[j] + (j + 1 < branches ? total[j + 1] : 0);
        }
        List<Link> links = new ArrayList<>();
        links.add(Link.plain(1, 2, new SquareLaw(4 / (total[0] * total[0]) + 6.0 / branches / (total[0] * total[0]))));
        for (int j = 1; j < branches; j++) {
            links.add(Link.plain(j + 1, j + 2, new SquareLaw(6.0 / branches / (total[j] * total[j]))));
        }
        for (int j = 0; j < branches; j++) {
            double open = (3 + Inputs.uniform(502, j)) / (design[j] * design[j]);
            links.add(Link.terminal(j + 2, 0, new SquareLaw(open), design[j]));
        }
        demand = demands(design);
        solver = NetworkSolver.of(
                Network.closed(branches + 2, 1, links, new Network.Scale(total[0], DESIGN_METRES)));
        law = law((DESIGN_METRES - MINIMUM_METRES) / (total[0] * total[0]));
        solutions = new NetworkSolution[cases];
    }

    private double[][] demands(double[] design) {
        double[][] all = new double[cases][branches];
        for (int m = 0; m < cases; m++) {
            for (int j = 0; j < branches; j++) {
                long at = (long) m * branches + j;
                double base = 0.25 + 0.75 * j / (branches - 1);
                double share = Math.min(1, base * (0.7 + 0.6 * Inputs.uniform(504, at)));
                all[m][j] = Inputs.uniform(503, at) < 0.1 ? 0 : design[j] * share;
            }
        }
        return all;
    }

    private static HeadSource law(double rise) {
        return new HeadSource() {
            @Override
            public double metresAt(double q) {
                return MINIMUM_METRES + rise * q * q;
            }

            @Override
            public double slopeAt(double q) {
                return 2 * rise * q;
            }
        };
    }

    @Override
    public String name() {
        return way;
    }

    /** Flows are in m³/h here, as the reference has them: the equations have no unit of their own. */
    @Override
    public void call() {
        for (int m = 0; m < cases; m++) {
            for (int j = 0; j < branches; j++) {
                solver.ask(branches + j, demand[m][j]);
            }
            solutions[m] = solver.solve(law);
        }
    }

    @Override
    public Map<String, Object> outputs() {
        double[] flow = new double[cases];
        double[] head = new double[cases];
        int starved = 0;
        double worst = 1;
        for (int m = 0; m < cases; m++) {
            NetworkSolution solution = solutions[m];
            if (!solution.converged() || solution.residuals().energyMetres() > 1e-8) {
                throw new IllegalStateException(solution.residuals().toString());
            }
            flow[m] = solution.pump().cubicMetresPerSecond();
            head[m] = solution.pump().metres();
            for (int j = 0; j < branches; j++) {
                if (solution.state(branches + j) != LinkState.REMOVED) {
                    double share = solution.flow(branches + j) / demand[m][j];
                    worst = Math.min(worst, share);
                    starved += share < 0.99 ? 1 : 0;
                }
            }
        }
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("sum_Qtot", Inputs.sum(flow, 1));
        out.put("sum_H", Inputs.sum(head, 1));
        out.put("Qtot[0]", flow[0]);
        out.put("H[0]", head[0]);
        out.put("q_last[0]", solutions[0].flow(2 * branches - 1));
        out.put("starved_branches", starved);
        out.put("worst_ratio", worst);
        return out;
    }
}

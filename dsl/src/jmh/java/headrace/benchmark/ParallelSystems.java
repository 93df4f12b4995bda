package headrace.benchmark;

import headrace.pump.HeaderSolver;
import headrace.pump.PumpBranch;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** W4: eight unequal pumps behind check valves, on ten thousand systems. */
final class ParallelSystems implements Workload {
    private static final int SYSTEMS = 10_000;
    private static final double STATIC = 2;
    private static final double CRACKING = 0.25;
    private static final double SQUARED = 3600.0 * 3600;
    private static final double[][] PUMPS = {
        {30.0, -0.010, -0.00090, 1.00, 0.00012},
        {31.2, -0.012, -0.00082, 0.95, 0.00010},
        {27.5, -0.008, -0.00140, 1.00, 0.00020},
        {33.0, -0.020, -0.00110, 0.90, 0.00015},
        {24.0, -0.005, -0.00065, 1.00, 0.00008},
        {36.0, -0.030, -0.00200, 0.92, 0.00030},
        {22.0, 0.000, -0.00160, 1.05, 0.00025},
        {29.0, -0.015, -0.00100, 0.97, 0.00012}
    };

    private final boolean singly;
    private final List<PumpBranch> branches = new ArrayList<>();
    private final double[] k = new double[SYSTEMS];
    private final double[] total = new double[SYSTEMS];
    private final double[] metres = new double[SYSTEMS];
    private final double[][] flows = new double[SYSTEMS][PUMPS.length];

    ParallelSystems(boolean singly) {
        this.singly = singly;
        for (double[] row : PUMPS) {
            double to = (-row[1] - Math.sqrt(row[1] * row[1] - 4 * row[2] * (row[0] - 1))) / (2 * row[2]);
            branches.add(new PumpBranch(
                    "pump " + (branches.size() + 1),
                    Inputs.pump(to, row[0], row[1], row[2]).atSpeed(Ratio.of(row[3])),
                    Head.metres(CRACKING),
                    row[4] * SQUARED,
                    true));
        }
        for (int j = 0; j < SYSTEMS; j++) {
            k[j] = 1e-5 * Math.pow(10, 3.0 * j / (SYSTEMS - 1)) * SQUARED;
        }
    }

    @Override
    public String name() {
        return singly ? "W4b one at a time, 1,000" : "W4a batch of 10,000";
    }

    /** The table of the combined curve is made in the call, once for all systems. */
    @Override
    public void call() {
        HeaderSolver solver = HeaderSolver.of(branches);
        for (int j = 0; j < SYSTEMS; j += singly ? 10 : 1) {
            total[j] = solver.totalFlow(STATIC, k[j], flows[j]);
            metres[j] = STATIC + k[j] * total[j] * total[j];
        }
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("sum_Qtot", Inputs.sum(total, 3600));
        if (singly) {
            return out;
        }
        out.put("sum_H", Inputs.sum(metres, 1));
        int open = 0;
        for (int j = 0; j < SYSTEMS; j++) {
            open += open(j);
        }
        out.put("open_valves", open);
        for (int j : new int[] {0, 5000, 9999}) {
            out.put("Qtot[" + j + "]", total[j] * 3600);
            out.put("H[" + j + "]", metres[j]);
            out.put("open[" + j + "]", open(j));
        }
        for (int i = 0; i < PUMPS.length; i++) {
            double[] own = new double[SYSTEMS];
            for (int j = 0; j < SYSTEMS; j++) {
                own[j] = flows[j][i];
            }
            out.put("sum_Q_pump" + (i + 1), Inputs.sum(own, 3600));
        }
        return out;
    }

    private int open(int j) {
        int open = 0;
        for (double flow : flows[j]) {
            open += flow > 0 ? 1 : 0;
        }
        return open;
    }
}

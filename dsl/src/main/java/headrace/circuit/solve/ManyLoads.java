package headrace.circuit.solve;

import java.util.Arrays;
import java.util.Optional;

/**
 * Many loads of one direct-return circuit whose laws go with the square of flow, such as the hours of a year: all rows
 * at once where every demand is met, which most are, the others one by one.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, m. Arrays of branches come first, in the order of {@link #links}; then rows.
 *   <dt>Limits
 *   <dd>As {@link Ladder}: for one shape only, and laws of flow only. Each row is solved to 1e-12 of the design head.
 *   <dt>Errors
 *   <dd>{@link #solve} returns false if a row was not solved: solve such a row with {@link NetworkSolver}.
 *   <dt>Source
 *   <dd>As {@link Ladder}.
 * </dl>
 */
public final class ManyLoads {
    private static final int BLOCK = 512;

    private final LadderShape shape;
    private final Ladder ladder;
    private final double[] open;
    private final double[] main;
    private final int branches;
    private final double[] flowHere = new double[BLOCK];
    private final double[] headHere = new double[BLOCK];
    private final double[] spare = new double[BLOCK];

    private ManyLoads(LadderShape shape, Ladder ladder) {
        this.shape = shape;
        this.ladder = ladder;
        open = shape.open();
        main = shape.main();
        branches = open.length;
    }

    /** Returns it for a network, or nothing if the network is of another shape. */
    public static Optional<ManyLoads> of(Network network) {
        LadderShape shape = LadderShape.of(network);
        return shape == null ? Optional.empty() : Optional.of(new ManyLoads(shape, Ladder.of(network)));
    }

    /** Returns the links of the terminals, from the pump outwards: the order of all arrays here. */
    public int[] links() {
        int[] all = new int[branches];
        for (int j = 0; j < branches; j++) {
            all[j] = shape.rung(branches - 1 - j);
        }
        return all;
    }

    /**
     * Solves every row.
     *
     * @param law the law
     * @param demands what is asked of each branch, by branch and row, 0 or more
     * @param flows what each gets, to be filled
     * @param totals the flow through the pump, to be filled
     * @param heads the head at the pump, to be filled; of a row in which nothing is asked, the law's at no flow
     * @return whether every row was solved
     */
    public boolean solve(RowLaw law, double[][] demands, double[][] flows, double[] totals, double[] heads) {
        boolean all = true;
        Row row = new Row(law);
        double[] one = new double[branches];
        for (int from = 0; from < totals.length; from += BLOCK) {
            int count = Math.min(BLOCK, totals.length - from);
            met(law, demands, from, count, totals, heads);
            for (int j = 0; j < branches; j++) {
                System.arraycopy(demands[j], from, flows[j], from, count);
            }
            for (int i = 0; i < count; i++) {
                if (spare[i] < 0) {
                    row.at = from + i;
                    for (int j = 0; j < branches; j++) {
                        one[branches - 1 - j] = demands[j][from + i];
                    }
                    all &= ladder.solveRow(one, row);
                    for (int j = 0; j < branches; j++) {
                        flows[j][from + i] = ladder.flow(branches - 1 - j);
                    }
                    totals[from + i] = ladder.total();
                    heads[from + i] = law.metresAt(from + i, ladder.total());
                }
            }
        }
        return all;
    }

    /** Walks outwards with all demands met, and keeps the least head to spare of each row. */
    private void met(RowLaw law, double[][] demands, int from, int count, double[] totals, double[] heads) {
        sum(demands, from, count);
        for (int i = 0; i < count; i++) {
            totals[from + i] = flowHere[i];
            headHere[i] = law.metresAt(from + i, flowHere[i]);
            heads[from + i] = headHere[i];
            spare[i] = 0;
        }
        for (int j = 0; j < branches; j++) {
            double k = main[branches - 1 - j];
            double r = open[branches - 1 - j];
            double[] own = demands[j];
            for (int i = 0; i < count; i++) {
                double d = own[from + i];
                headHere[i] -= k * flowHere[i] * flowHere[i];
                double left = headHere[i] - r * d * d;
                spare[i] = d > 0 ? Math.min(spare[i], left) : spare[i];
                flowHere[i] -= d;
            }
        }
    }

    private void sum(double[][] demands, int from, int count) {
        Arrays.fill(flowHere, 0, count, 0);
        for (int j = branches - 1; j >= 0; j--) {
            double[] own = demands[j];
            for (int i = 0; i < count; i++) {
                flowHere[i] += own[from + i];
            }
        }
    }

    /**
     * Fills the least head at the pump at which every demand of a row is met with no valve further open than a share of
     * its greatest flow coefficient; 0 where nothing is asked.
     *
     * @param share the share of the open branch's flow coefficient, above 0 and up to 1
     */
    public void fillNeediest(double[][] demands, double share, double[] heads) {
        for (int from = 0; from < heads.length; from += BLOCK) {
            int count = Math.min(BLOCK, heads.length - from);
            sum(demands, from, count);
            Arrays.fill(headHere, 0, count, 0);
            Arrays.fill(spare, 0, count, 0);
            for (int j = 0; j < branches; j++) {
                double k = main[branches - 1 - j];
                double r = open[branches - 1 - j] / (share * share);
                double[] own = demands[j];
                for (int i = 0; i < count; i++) {
                    double d = own[from + i];
                    headHere[i] += k * flowHere[i] * flowHere[i];
                    double need = headHere[i] + r * d * d;
                    spare[i] = d > 0 ? Math.max(spare[i], need) : spare[i];
                    flowHere[i] -= d;
                }
            }
            System.arraycopy(spare, 0, heads, from, count);
        }
    }

    /** One row as a law of flow. */
    private static final class Row implements HeadSource {
        private final RowLaw law;
        private int at;

        Row(RowLaw law) {
            this.law = law;
        }

        @Override
        public double metresAt(double cubicMetresPerSecond) {
            return law.metresAt(at, cubicMetresPerSecond);
        }

        @Override
        public double slopeAt(double cubicMetresPerSecond) {
            return law.slopeAt(at, cubicMetresPerSecond);
        }
    }
}

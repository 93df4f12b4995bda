package headrace.pump;

import headrace.problem.Refusal;
import headrace.units.Flow;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How several pumps behind check valves share the flow of a system, on bare doubles and for many systems one after
 * another.
 *
 * <p>The unknown is the flow of the system {@code Q}: the flows of the branches at the head of the system, less
 * {@code Q}, fall with {@code Q} and so have one root. It is found by Halley's method inside a bracket, from a start
 * that is read off the combined curve. Where the head of a branch is a parabola its flow is a closed form.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows in m³/s, heads in m.
 *   <dt>Limits
 *   <dd>Branches whose head falls with flow from no flow on; {@link ParallelPumps} takes others too. Flows are right to
 *       1e-12 of the greatest. No range is checked: a curve goes on beyond its end, and {@link #covers} says whether a
 *       result lies inside. May be used by several threads at once.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code SHUT_OFF_UNKNOWN} or {@code DROOPING_BRANCH}, both when it is made; none later.
 *   <dt>Source
 *   <dd>Textbook knowledge: equal head between the headers, flows add.
 * </dl>
 */
public final class HeaderSolver {
    private static final int TABLE = 256;
    private static final int FEWEST_A_PART = 16;
    private static final int MOST_STEPS = 100;
    private static final double ROUNDING = 1e-12;
    private static final double DROOP = 1e-9;
    private static final int LOOKED_AT = 256;

    private final int mostSteps;
    private final int count;
    private final FallingHead[] falling;
    private final boolean allParabolas;
    private final int[] place;
    private final double[] shutOff;
    private final double[] linear;
    private final double[] linearSquared;
    private final double[] square;
    private final double[] ends;
    private final double[] tableFlows;
    private final double[] tableMetres;
    private final double nothing;

    private HeaderSolver(List<PumpBranch> branches, int mostSteps) {
        this.mostSteps = mostSteps;
        count = branches.size();
        int[] running =
                IntStream.range(0, count).filter(i -> branches.get(i).running()).toArray();
        falling = Arrays.stream(running)
                .mapToObj(i -> new FallingHead(branches.get(i)))
                .toArray(FallingHead[]::new);
        Integer[] order = new Integer[running.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> -falling[i].shutOffMetres()));
        place = Arrays.stream(order).mapToInt(i -> running[i]).toArray();
        FallingHead[] sorted = Arrays.stream(order).map(i -> falling[i]).toArray(FallingHead[]::new);
        System.arraycopy(sorted, 0, falling, 0, sorted.length);
        allParabolas = Arrays.stream(falling).allMatch(FallingHead::parabola);
        shutOff = Arrays.stream(falling).mapToDouble(FallingHead::shutOffMetres).toArray();
        linear = Arrays.stream(falling).mapToDouble(FallingHead::linear).toArray();
        linearSquared = Arrays.stream(linear).map(b -> b * b).toArray();
        square = Arrays.stream(falling).mapToDouble(FallingHead::square).toArray();
        ends = Arrays.stream(falling).mapToDouble(FallingHead::end).toArray();
        tableMetres = tableHeads();
        tableFlows = Arrays.stream(tableMetres).map(this::totalFlowAt).toArray();
        nothing = ROUNDING * tableFlows[tableFlows.length - 1];
    }

    /** Returns the solver for branches; those whose pump stands still get no flow. */
    public static HeaderSolver of(List<PumpBranch> branches) {
        return ofSteps(branches, MOST_STEPS);
    }

    /** Returns the solver that stops after a number of steps, to see how few are enough. */
    static HeaderSolver ofSteps(List<PumpBranch> branches, int mostSteps) {
        branches.stream().filter(PumpBranch::running).forEach(HeaderSolver::requireFalling);
        return new HeaderSolver(branches, mostSteps);
    }

    private static void requireFalling(PumpBranch branch) {
        BranchShape.requireShutOff(branch);
        double high = branch.curve().extendedHighestFlow().si();
        double least = branch.headerMetres(0);
        double nothing = DROOP * Math.abs(least);
        for (int i = 1; i <= LOOKED_AT; i++) {
            double q = high * i / LOOKED_AT;
            double here = branch.headerMetres(q);
            if (here > least + nothing) {
                throw new Refusal(
                        PumpProblem.DROOPING_BRANCH,
                        "Asked for the fast solution with " + branch + ", whose head on its branch rises at "
                                + Flow.cubicMetresPerSecond(q),
                        "It takes branches whose head falls with flow throughout, so that there is one solution",
                        "Use the solution that lists all points, or fit the curve with the shape 'never rising'");
            }
            least = Math.min(least, here);
        }
    }

    /** Heads from the greatest shut-off head down to 0, closer where a check valve opens. */
    private double[] tableHeads() {
        double[] levels = Arrays.stream(shutOff)
                .filter(c -> c > 0)
                .map(c -> -c)
                .sorted()
                .distinct()
                .map(c -> -c)
                .toArray();
        int parts = levels.length;
        int each = parts == 0 ? 0 : Math.max(FEWEST_A_PART, TABLE / parts);
        double[] heads = new double[parts * each + 1];
        heads[0] = parts == 0 ? 0 : levels[0];
        for (int part = 0; part < parts; part++) {
            double bottom = part + 1 < parts ? levels[part + 1] : 0;
            for (int i = 1; i <= each; i++) {
                double t = (double) i / each;
                heads[part * each + i] = levels[part] - (levels[part] - bottom) * t * t;
            }
        }
        return heads;
    }

    /** Returns the number of branches, and so of the flows in a result. */
    public int count() {
        return count;
    }

    /** Returns the flow in m³/s that all branches together give at a head between the headers in m. */
    public double totalFlowAt(double metres) {
        double sum = 0;
        for (int i = 0; i < shutOff.length && shutOff[i] > metres; i++) {
            sum += flowOf(i, metres);
        }
        return sum;
    }

    private double flowOf(int i, double metres) {
        if (!falling[i].parabola()) {
            return falling[i].flowAt(metres);
        }
        double below = shutOff[i] - metres;
        return 2 * below / (linear[i] + Math.sqrt(linearSquared[i] + 4 * square[i] * below));
    }

    /**
     * Returns the flow in m³/s at which the pumps meet a system that takes {@code h = hₛ + k·Q²}.
     *
     * @param staticMetres {@code hₛ} in m
     * @param metresPerSquaredFlow {@code k} in m for each (m³/s)², 0 or more
     * @param flows takes the flow of each branch in m³/s, in the order in which the branches were given; 0 where the
     *     check valve is closed
     */
    public double totalFlow(double staticMetres, double metresPerSquaredFlow, double[] flows) {
        Arrays.fill(flows, 0, count, 0.0);
        if (shutOff.length == 0 || shutOff[0] <= staticMetres) {
            return 0;
        }
        return allParabolas
                ? ofParabolas(staticMetres, metresPerSquaredFlow, flows)
                : ofCurves(staticMetres, metresPerSquaredFlow, flows);
    }

    /** Reads the flow at which the combined curve crosses the system off the table. */
    private double start(double staticMetres, double k) {
        int low = 0;
        int high = tableFlows.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            double q = tableFlows[middle];
            if (staticMetres + k * q * q < tableMetres[middle]) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double q0 = tableFlows[low];
        double q1 = tableFlows[high];
        double above = tableMetres[low] - staticMetres - k * q0 * q0;
        double beneath = staticMetres + k * q1 * q1 - tableMetres[high];
        return q0 + (q1 - q0) * above / (above + beneath);
    }

    private double highest(double staticMetres) {
        return staticMetres < 0 ? totalFlowAt(staticMetres) : tableFlows[tableFlows.length - 1];
    }

    private double ofParabolas(double staticMetres, double k, double[] flows) {
        double low = 0;
        double high = highest(staticMetres);
        double x = Math.min(Math.max(start(staticMetres, k), 0), high);
        int i = 0;
        for (int step = 0; step < mostSteps; step++) {
            double metres = staticMetres + k * x * x;
            double sum = 0;
            double slope = 0;
            double bend = 0;
            for (i = 0; i < shutOff.length && shutOff[i] > metres; i++) {
                double below = shutOff[i] - metres;
                double root = Math.sqrt(linearSquared[i] + 4 * square[i] * below);
                double both = linear[i] + root;
                double shared = 1 / (root * both);
                double falls = both * shared;
                double q = 2 * below * root * shared;
                flows[place[i]] = q;
                sum += q;
                slope -= falls;
                bend -= 2 * square[i] * falls * falls * falls;
            }
            double f = sum - x;
            if (Math.abs(f) <= nothing) {
                break;
            }
            if (f > 0) {
                low = x;
            } else {
                high = x;
            }
            double rise = 2 * k * x;
            double f1 = slope * rise - 1;
            double f2 = bend * rise * rise + 2 * k * slope;
            double next = x - 2 * f * f1 / (2 * f1 * f1 - f * f2);
            x = next > low && next < high ? next : 0.5 * (low + high);
        }
        return closed(i, flows);
    }

    /** Returns the sum of the flows; branches that an earlier step had opened may have closed again. */
    private double closed(int open, double[] flows) {
        double sum = 0;
        for (int i = 0; i < place.length; i++) {
            if (i < open) {
                sum += flows[place[i]];
            } else {
                flows[place[i]] = 0;
            }
        }
        return sum;
    }

    private double ofCurves(double staticMetres, double k, double[] flows) {
        double low = 0;
        double high = highest(staticMetres);
        double x = Math.min(Math.max(start(staticMetres, k), 0), high);
        int i = 0;
        for (int step = 0; step < mostSteps; step++) {
            double metres = staticMetres + k * x * x;
            double sum = 0;
            double slope = 0;
            for (i = 0; i < shutOff.length && shutOff[i] > metres; i++) {
                double q = flowOf(i, metres);
                flows[place[i]] = q;
                sum += q;
                slope += 1 / falling[i].slopeAt(q);
            }
            double f = sum - x;
            if (Math.abs(f) <= nothing) {
                break;
            }
            if (f > 0) {
                low = x;
            } else {
                high = x;
            }
            double next = x - f / (2 * k * x * slope - 1);
            x = next > low && next < high ? next : 0.5 * (low + high);
        }
        return closed(i, flows);
    }

    /** Returns whether flows in m³/s, one for each branch, lie inside the curves. */
    public boolean covers(double[] flows) {
        for (int i = 0; i < place.length; i++) {
            if (flows[place[i]] > ends[i] * (1 + DROOP)) {
                return false;
            }
        }
        return true;
    }
}

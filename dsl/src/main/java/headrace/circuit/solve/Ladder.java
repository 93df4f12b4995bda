package headrace.circuit.solve;

import java.util.Arrays;

/**
 * The quick way for a direct-return circuit whose laws all go with the square of flow: from the head at the last branch
 * everything back to the pump follows in one pass, so that one number is left to find.
 *
 * <p>Where all demands are met, one pass from the pump outwards says so. Very long and narrow mains make the head at
 * the pump depend on that number too sharply; then this way gives up and the general one is taken.
 *
 * <p>Source: common practice for radial networks, no source; the safeguard is bisection.
 */
final class Ladder {
    private static final int PASSES = 60;

    /** Rungs from the far end: resistance of the open branch, of the mains before it, 1/√ of the first. */
    private final double[] open;

    private final double[] main;
    private final double[] conductance;
    private final LadderShape shape;
    private final double[] demand;
    private final double[] need;
    private final double[] flow;
    private final double tolerance;
    private int passes;
    private double total;
    private double totalSlope;
    private double rise;
    private double riseSlope;

    private Ladder(LadderShape shape, double tolerance) {
        this.shape = shape;
        this.tolerance = tolerance;
        open = shape.open();
        main = shape.main();
        conductance = Arrays.stream(open).map(r -> 1 / Math.sqrt(r)).toArray();
        demand = new double[open.length];
        need = new double[open.length];
        flow = new double[open.length];
    }

    /** Returns the quick way for a network, or nothing if it is of another shape. */
    static Ladder of(Network network) {
        LadderShape shape = LadderShape.of(network);
        return shape == null ? null : new Ladder(shape, 1e-12 * network.scale().metres());
    }

    /** Solves, and puts flows and heads in place; returns whether it could. */
    boolean solve(Iterate at, HeadSource source) {
        for (int j = 0; j < demand.length; j++) {
            demand[j] = at.most[shape.rung(j)];
        }
        if (!solve(source)) {
            return false;
        }
        shape.place(at, flow, source.metresAt(total));
        return true;
    }

    /** Solves for demands from the far end; returns whether it could. */
    boolean solveRow(double[] demands, HeadSource source) {
        System.arraycopy(demands, 0, demand, 0, demand.length);
        return solve(source);
    }

    /** Returns the flow of a branch, counted from the far end. */
    double flow(int j) {
        return flow[j];
    }

    /** Returns the flow through the pump. */
    double total() {
        return total;
    }

    private boolean solve(HeadSource source) {
        double sum = 0;
        for (int j = 0; j < demand.length; j++) {
            need[j] = open[j] * demand[j] * demand[j];
            sum += demand[j];
        }
        passes = 1;
        double head = source.metresAt(sum);
        double last = sum < Double.POSITIVE_INFINITY ? outwards(sum, head) : Double.NEGATIVE_INFINITY;
        if (last == Double.POSITIVE_INFINITY) {
            System.arraycopy(demand, 0, flow, 0, flow.length);
            total = sum;
            return true;
        }
        return found(source, last);
    }

    /** Returns how many passes the last solution took. */
    int passes() {
        return passes;
    }

    /** Goes from the pump outwards at full demands; returns the head at the last branch, infinity if all are met. */
    private double outwards(double sum, double head) {
        double q = sum;
        double p = head;
        boolean met = true;
        for (int j = demand.length - 1; j >= 0; j--) {
            p -= main[j] * q * q;
            met &= p >= need[j] || demand[j] == 0;
            q -= demand[j];
        }
        return met ? Double.POSITIVE_INFINITY : p;
    }

    private boolean found(HeadSource source, double last) {
        double low = 0;
        double high = Double.POSITIVE_INFINITY;
        double x = start(source, last);
        for (int i = 0; i < PASSES; i++) {
            inwards(x);
            passes++;
            double off = rise - source.metresAt(total);
            if (Math.abs(off) <= tolerance) {
                return true;
            }
            low = off < 0 ? x : low;
            high = off < 0 ? high : x;
            double next = x - off / (riseSlope - source.slopeAt(total) * totalSlope);
            if (!(next > low && next < high)) {
                next = high < Double.POSITIVE_INFINITY ? low + (high - low) / 2 : 2 * x;
            }
            if (next == x) {
                return Math.abs(off) <= 10 * tolerance;
            }
            x = next;
        }
        return false;
    }

    /** The head left at the last branch if all others had their demands, but not less than it could be. */
    private double start(HeadSource source, double last) {
        return Math.max(last, 0.25 * Math.abs(source.metresAt(0)));
    }

    /** Goes from the last branch, with a head there, to the pump. */
    private void inwards(double last) {
        double p = last;
        double dp = 1;
        double q = 0;
        double dq = 0;
        for (int j = 0; j < flow.length; j++) {
            double own = demand[j];
            if (p < need[j]) {
                own = Math.sqrt(p) * conductance[j];
                dq += 0.5 * own / p * dp;
            }
            flow[j] = own;
            q += own;
            double loss = main[j] * q;
            p += loss * q;
            dp += 2 * loss * dq;
        }
        total = q;
        totalSlope = dq;
        rise = p;
        riseSlope = dp;
    }
}

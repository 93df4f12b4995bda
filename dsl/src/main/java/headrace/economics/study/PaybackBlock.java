package headrace.economics.study;

import java.util.Arrays;

/**
 * The cash flows of a block of draws against one baseline, year by year, and what comes of them. Loops over years hold
 * loops over draws, in which all arrays are indexed alike, so that they are compiled to vectors.
 */
final class PaybackBlock {
    private static final int SIZE = DriverBlock.SIZE;
    private static final double TOLERANCE = 1e-12;
    private static final int MOST_STEPS = 100;

    /** The greatest discount factor that is searched for an internal rate: a rate of −50 %. */
    private static final double GREATEST = 2;

    final double[] simple = new double[SIZE];
    final double[] discounted = new double[SIZE];
    final double[] value = new double[SIZE];
    final double[] rate = new double[SIZE];

    private final PaybackModel model;
    private final double[][] cash;
    private final double[] saving = new double[SIZE];
    private final double[] upkeep = new double[SIZE];
    private final double[] growth = new double[SIZE];
    private final double[] step = new double[SIZE];
    private final double[] factor = new double[SIZE];
    private final double[] next = new double[SIZE];
    private final double[] x = new double[SIZE];
    private final double[] p = new double[SIZE];
    private final double[] slope = new double[SIZE];
    private final double[] low = new double[SIZE];
    private final double[] high = new double[SIZE];

    PaybackBlock(PaybackModel model) {
        this.model = model;
        this.cash = new double[model.years()][SIZE];
    }

    /** Follows the draws of a block against a baseline. */
    void follow(DriverBlock drivers, boolean fixedSpeed) {
        begin(drivers, fixedSpeed);
        double[] cost = drivers.of(Driver.FIRST_COST);
        double upkeepGrowth = 1 + model.upkeepGrowth().value();
        double replaced = model.replacement().costShare();
        for (int year = 0; year < model.years(); year++) {
            double[] row = cash[year];
            double share = year + 1 == model.replacement().year() ? replaced : 0;
            for (int i = 0; i < SIZE; i++) {
                row[i] = saving[i] - upkeep[i] - share * cost[i];
            }
            for (int i = 0; i < SIZE; i++) {
                next[i] = value[i] + row[i] * factor[i];
            }
            for (int i = 0; i < SIZE; i++) {
                if (next[i] >= 0 && value[i] < 0 && discounted[i] == Double.POSITIVE_INFINITY) {
                    discounted[i] = year - value[i] / (row[i] * factor[i]);
                }
            }
            for (int i = 0; i < SIZE; i++) {
                value[i] = next[i];
                saving[i] *= growth[i];
                upkeep[i] *= upkeepGrowth;
                factor[i] *= step[i];
            }
        }
        for (int i = 0; i < SIZE; i++) {
            simple[i] = cash[0][i] > 0 ? cost[i] / cash[0][i] : Double.POSITIVE_INFINITY;
        }
        solveRates(cost);
    }

    private void begin(DriverBlock drivers, boolean fixedSpeed) {
        double[] kilowatts = drivers.of(Driver.POWER);
        double[] hours = drivers.of(Driver.HOURS);
        double[] realised = drivers.of(Driver.REALISATION);
        double[] price = drivers.of(Driver.PRICE);
        double[] saved = drivers.of(Driver.SAVED);
        double[] fixed = drivers.of(Driver.FIXED_SPEED);
        double[] cost = drivers.of(Driver.FIRST_COST);
        double[] rise = drivers.of(Driver.ESCALATION);
        double[] discount = drivers.of(Driver.DISCOUNT);
        System.arraycopy(drivers.of(Driver.UPKEEP), 0, upkeep, 0, SIZE);
        Arrays.fill(discounted, Double.POSITIVE_INFINITY);
        for (int i = 0; i < SIZE; i++) {
            double share = fixedSpeed ? fixed[i] - (1 - saved[i]) : saved[i];
            saving[i] = kilowatts[i] * hours[i] * realised[i] * price[i] * share;
        }
        for (int i = 0; i < SIZE; i++) {
            growth[i] = 1 + rise[i];
            step[i] = 1 / (1 + discount[i]);
            factor[i] = step[i];
            value[i] = -cost[i];
        }
    }

    /**
     * Solves {@code Σ Sₜ·x^t = C} for {@code x = 1/(1+i)} by Newton's steps inside a bracket from 0 to 2. Where the
     * savings do not bring back the cost at a rate of −50 % there is no rate, held as minus infinity.
     */
    private void solveRates(double[] cost) {
        for (int i = 0; i < SIZE; i++) {
            x[i] = Math.max(0.05, Math.min(1.5, cost[i] / (cost[i] + cash[0][i])));
        }
        Arrays.fill(low, 0);
        Arrays.fill(high, GREATEST);
        double moved = 1;
        for (int n = 0; n < MOST_STEPS && moved > TOLERANCE; n++) {
            evaluate();
            moved = move(cost);
        }
        for (int i = 0; i < SIZE; i++) {
            boolean none = high[i] == GREATEST && x[i] > GREATEST * (1 - 1e-9);
            rate[i] = none ? Double.NEGATIVE_INFINITY : 1 / x[i] - 1;
        }
    }

    /** Sets {@code p = Σ Sₜ·x^(t−1)} and its slope, by Horner's scheme. */
    private void evaluate() {
        System.arraycopy(cash[cash.length - 1], 0, p, 0, SIZE);
        Arrays.fill(slope, 0);
        for (int year = cash.length - 2; year >= 0; year--) {
            double[] row = cash[year];
            for (int i = 0; i < SIZE; i++) {
                slope[i] = slope[i] * x[i] + p[i];
                p[i] = p[i] * x[i] + row[i];
            }
        }
    }

    /** Moves each draw a step and returns the greatest move. */
    private double move(double[] cost) {
        double most = 0;
        for (int i = 0; i < SIZE; i++) {
            double at = x[i];
            double excess = p[i] * at - cost[i];
            double by = excess / (slope[i] * at + p[i]);
            if (excess > 0) {
                high[i] = at;
            } else {
                low[i] = at;
            }
            double to = at - by;
            if (!(to > low[i] && to < high[i])) {
                to = Math.abs(by) <= TOLERANCE ? at : 0.5 * (low[i] + high[i]);
            }
            most = Math.max(most, Math.abs(to - at));
            x[i] = to;
        }
        return most;
    }
}

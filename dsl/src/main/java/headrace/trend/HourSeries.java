package headrace.trend;

import java.util.Arrays;

/**
 * A residual hour by hour: mean of measured less expected.
 *
 * @param channel what was measured
 * @param hours the hours since 1970 UTC, increasing; not all need be there
 * @param values the residuals in SI
 * @param reference how many hours at the beginning are the reference
 */
public record HourSeries(Channel channel, long[] hours, double[] values, int reference) {
    private static final int DAY = 24;
    private static final int LEAST_PAIRS = 12;
    private static final double MOST = 0.95;

    /** Returns how many hours there are. */
    public int count() {
        return hours.length;
    }

    /** Returns the mean of the reference hours. */
    public double mean() {
        return Arrays.stream(values, 0, reference).average().orElse(0);
    }

    /** Returns the standard deviation of the reference hours. */
    public double deviation() {
        double mean = mean();
        double squares = 0;
        for (int i = 0; i < reference; i++) {
            squares += (values[i] - mean) * (values[i] - mean);
        }
        return Math.sqrt(squares / (reference - 1));
    }

    /** Returns the correlation of the reference hours that follow each other, between 0 and 0.95. */
    public double correlation() {
        return Math.min(MOST, Math.max(0, correlation(1)));
    }

    /**
     * Returns by how much the mean of many hours scatters more than that of independent ones: {@code √(1 + 2·Σ (1 −
     * k/25)·ρ_k)} over a day of lags, not below 1 (Newey and West, Econometrica 55, 1987).
     */
    public double widening() {
        double sum = 1;
        for (int lag = 1; lag <= DAY; lag++) {
            sum += 2 * (1 - lag / (DAY + 1.0)) * correlation(lag);
        }
        return Math.sqrt(Math.max(1, sum));
    }

    /** Returns the correlation of the reference hours that lie so many hours apart, 0 where too few do. */
    private double correlation(int lag) {
        double mean = mean();
        double products = 0;
        double squares = 0;
        int pairs = 0;
        for (int i = 0, j = 0; i < reference; i++) {
            while (j < reference && hours[j] < hours[i] + lag) {
                j++;
            }
            if (j < reference && hours[j] == hours[i] + lag) {
                products += (values[i] - mean) * (values[j] - mean);
                squares += (values[i] - mean) * (values[i] - mean);
                pairs++;
            }
        }
        return pairs < LEAST_PAIRS || squares == 0 ? 0 : products / squares;
    }
}

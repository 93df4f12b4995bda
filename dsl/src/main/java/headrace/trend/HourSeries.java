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
        double mean = mean();
        double products = 0;
        double squares = 0;
        int pairs = 0;
        for (int i = 1; i < reference; i++) {
            if (hours[i] == hours[i - 1] + 1) {
                products += (values[i] - mean) * (values[i - 1] - mean);
                squares += (values[i] - mean) * (values[i] - mean);
                pairs++;
            }
        }
        return pairs < 3 || squares == 0 ? 0 : Math.min(0.95, Math.max(0, products / squares));
    }
}

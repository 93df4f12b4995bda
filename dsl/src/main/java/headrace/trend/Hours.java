package headrace.trend;

import java.util.Arrays;

/**
 * Means over clock hours, of the hours for which at least half the rows are there.
 *
 * @param hours the hours since 1970 UTC, increasing
 * @param means for each column the mean of each hour
 */
record Hours(long[] hours, double[][] means) {
    private static final int HOUR = 3600;

    /**
     * Returns the means.
     *
     * @param seconds the times of the rows, increasing
     * @param count how many rows there are
     * @param step the usual time from row to row in s
     * @param columns the columns to be taken the mean of
     */
    static Hours of(long[] seconds, int count, long step, double[]... columns) {
        int most = count == 0 ? 0 : (int) Math.min(count, hour(seconds[count - 1]) - hour(seconds[0]) + 1);
        long[] hours = new long[most];
        double[][] means = new double[columns.length][most];
        int found = 0;
        for (int from = 0, end; from < count; from = end) {
            long hour = hour(seconds[from]);
            end = from + 1;
            while (end < count && hour(seconds[end]) == hour) {
                end++;
            }
            if (2 * (end - from) * step >= HOUR) {
                hours[found] = hour;
                for (int j = 0; j < columns.length; j++) {
                    means[j][found] = mean(columns[j], from, end);
                }
                found++;
            }
        }
        for (int j = 0; j < columns.length; j++) {
            means[j] = Arrays.copyOf(means[j], found);
        }
        return new Hours(Arrays.copyOf(hours, found), means);
    }

    static long hour(long second) {
        return Math.floorDiv(second, HOUR);
    }

    private static double mean(double[] column, int from, int end) {
        double sum = 0;
        for (int i = from; i < end; i++) {
            sum += column[i];
        }
        return sum / (end - from);
    }

    int count() {
        return hours.length;
    }

    /** Returns how many hours lie before an hour. */
    int before(long hour) {
        int at = Arrays.binarySearch(hours, hour);
        return at >= 0 ? at : -at - 1;
    }
}

package headrace.numeric;

/**
 * Two cumulative sums of standardised values, one for each direction, and how often they raise a false alarm.
 *
 * <p>{@code C₊ = max(0, C₊ + z − k)} and {@code C₋ = max(0, C₋ − z − k)}; an alarm is the first value after which one
 * of them is above the limit.
 *
 * <p>Source: Page, Continuous Inspection Schemes, 1954; the run length by Siegmund, Sequential Analysis, 1985: with
 * {@code b = h + 1.166} one side runs {@code (e^(2kb) − 2kb − 1)/(2k²)} values between two false alarms, and the two
 * sides' rates add. It holds for values that do not depend on each other.
 */
public final class Cusum {
    /** How far a sum overshoots its limit on average, in standard deviations (Siegmund 1985). */
    private static final double OVERSHOOT = 1.166;

    private final double[] low;
    private final double[] high;
    private final double limit;

    private Cusum(double[] low, double[] high, double limit) {
        this.low = low;
        this.high = high;
        this.limit = limit;
    }

    /**
     * Returns the sums of values.
     *
     * @param values in standard deviations from what is expected
     * @param allowance k, half of the shift to be found, above 0
     * @param limit h
     */
    public static Cusum of(double[] values, double allowance, double limit) {
        double[] low = new double[values.length];
        double[] high = new double[values.length];
        double below = 0;
        double above = 0;
        for (int i = 0; i < values.length; i++) {
            below = Math.max(0, below - values[i] - allowance);
            above = Math.max(0, above + values[i] - allowance);
            low[i] = below;
            high[i] = above;
        }
        return new Cusum(low, high, limit);
    }

    /** Returns the mean number of values between two false alarms of both sides together. */
    public static double runLength(double allowance, double limit) {
        double reach = 2 * allowance * (limit + OVERSHOOT);
        return (Math.expm1(reach) - reach) / (2 * allowance * allowance) / 2;
    }

    /** Returns the limit that leads to a mean number of values, at least 1, between two false alarms. */
    public static double limitFor(double allowance, double runLength) {
        double low = 0;
        double high = 1;
        while (runLength(allowance, high) < runLength) {
            high *= 2;
        }
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (runLength(allowance, middle) < runLength) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** Returns the first value after which the sum for low values is above the limit, −1 if none. */
    public int lowAlarm() {
        return alarm(low);
    }

    /** Returns the first value after which the sum for high values is above the limit, −1 if none. */
    public int highAlarm() {
        return alarm(high);
    }

    /** Returns the sum for low values after a value. */
    public double lowAt(int index) {
        return low[index];
    }

    /** Returns the sum for high values after a value. */
    public double highAt(int index) {
        return high[index];
    }

    /**
     * Returns the value from which on a sum has grown without coming back to 0: the usual estimate of when a shift
     * began.
     *
     * @param index where it is looked back from
     * @param lowSide whether the sum for low values is meant
     */
    public int began(int index, boolean lowSide) {
        double[] sum = lowSide ? low : high;
        int at = index;
        while (at > 0 && sum[at - 1] > 0) {
            at--;
        }
        return at;
    }

    private int alarm(double[] sum) {
        for (int i = 0; i < sum.length; i++) {
            if (sum[i] > limit) {
                return i;
            }
        }
        return -1;
    }
}

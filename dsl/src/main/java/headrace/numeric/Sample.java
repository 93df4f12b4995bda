package headrace.numeric;

import headrace.work.Work;
import java.util.Arrays;

/**
 * What a sample says about itself in which some numbers may be infinite, such as paybacks that never come.
 *
 * <p>Infinite numbers keep their place at either end of the order. None may be NaN.
 */
public final class Sample {
    private final double[] values;
    private final double[] finite;
    private final int lowest;
    private Quantiles quantiles;

    /** Keeps a copy of the numbers, which are at least one. */
    public Sample(double[] numbers) {
        Work.poll();
        values = numbers.clone();
        int low = 0;
        int count = 0;
        for (double each : values) {
            low += each == Double.NEGATIVE_INFINITY ? 1 : 0;
            count += Math.abs(each) < Double.POSITIVE_INFINITY ? 1 : 0;
        }
        lowest = low;
        finite = count == values.length
                ? values
                : Arrays.stream(values).filter(Double::isFinite).toArray();
    }

    /** Returns how many numbers there are. */
    public int size() {
        return values.length;
    }

    /** Returns how many of the numbers are finite. */
    public int finite() {
        return finite.length;
    }

    /** Returns the mean; infinite if one of the numbers is. */
    public double mean() {
        return mean(values);
    }

    /** Returns the mean of the finite numbers, or 0 if there is none. */
    public double meanOfFinite() {
        return finite.length == 0 ? 0 : mean(finite);
    }

    private static double mean(double[] numbers) {
        double sum = 0;
        for (double each : numbers) {
            sum += each;
        }
        return sum / numbers.length;
    }

    /** Returns the standard deviation of the finite numbers with the divisor n − 1; 0 of one number. */
    public double standardDeviation() {
        double mean = meanOfFinite();
        double squares = 0;
        for (double each : finite) {
            squares += (each - mean) * (each - mean);
        }
        return finite.length < 2 ? 0 : Math.sqrt(squares / (finite.length - 1));
    }

    /** Returns how many numbers lie below a limit. */
    public int below(double limit) {
        int count = 0;
        for (double each : values) {
            count += each < limit ? 1 : 0;
        }
        return count;
    }

    /**
     * Returns the value below which a share of the sample lies, as {@link Quantiles} has it; infinite where it lies
     * among or beside infinite numbers.
     *
     * @param share the share, from 0 to 1
     */
    public double quantile(double share) {
        double place = share * (values.length - 1) - lowest;
        if (place < 0) {
            return Double.NEGATIVE_INFINITY;
        }
        if (place > finite.length - 1) {
            return Double.POSITIVE_INFINITY;
        }
        if (quantiles == null) {
            quantiles = Quantiles.of(finite);
        }
        return finite.length == values.length
                ? quantiles.at(share)
                : quantiles.at(finite.length == 1 ? 0 : place / (finite.length - 1));
    }
}

package headrace.economics.study;

import headrace.economics.EconomicsProblem;
import headrace.numeric.Normal;
import headrace.problem.Refusal;
import headrace.units.Numbers;
import java.util.Arrays;
import java.util.Locale;

/**
 * How a driver spreads: a fixed value, or a distribution.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Plain numbers in the unit of the {@link Driver}.
 *   <dt>Limits
 *   <dd>A triangle needs low ≤ mode ≤ high, a normal spread a deviation of 0 or more; a log-normal one a mean above 0.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_SPREAD}.
 *   <dt>Source
 *   <dd>JCGM 101:2008, 6.4 (distributions, drawn by inversion).
 * </dl>
 *
 * @param shape its shape
 * @param low the least value; the mean of a normal and a log-normal one
 * @param mode the likeliest value of a triangle; the deviation of a normal one, of a log-normal one that of its
 *     logarithm
 * @param high the greatest value; the mean of a normal and a log-normal one
 */
public record Spread(Shape shape, double low, double mode, double high) {
    /** The shapes. */
    public enum Shape {
        /** One value. */
        FIXED,
        /** All values between two, each as likely. */
        UNIFORM,
        /** From a least over a likeliest to a greatest value, in straight lines. */
        TRIANGULAR,
        /** The normal distribution. */
        NORMAL,
        /** One whose logarithm is normal. */
        LOG_NORMAL
    }

    /** Refuses what cannot be. */
    public Spread {
        boolean finite = Double.isFinite(low) && Double.isFinite(mode) && Double.isFinite(high);
        boolean ordered = switch (shape) {
            case FIXED, UNIFORM, TRIANGULAR -> low <= mode && mode <= high;
            case NORMAL -> mode >= 0;
            case LOG_NORMAL -> mode >= 0 && low > 0;
        };
        if (!finite || !ordered) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_SPREAD,
                    "Asked for a " + shape.name().toLowerCase(Locale.ROOT).replace('_', '-') + " spread of " + low
                            + ", " + mode + ", " + high,
                    "Values go from the least over the likeliest to the greatest, deviations are 0 or more, and the mean"
                            + " of a log-normal spread is above 0",
                    "Put the values in order");
        }
    }

    /** Returns one value without a spread. */
    public static Spread fixed(double value) {
        return new Spread(Shape.FIXED, value, value, value);
    }

    /** Returns a spread in which every value between two is as likely. */
    public static Spread uniform(double low, double high) {
        return new Spread(Shape.UNIFORM, low, 0.5 * low + 0.5 * high, high);
    }

    /** Returns a spread from a least over a likeliest to a greatest value. */
    public static Spread triangular(double low, double mode, double high) {
        return new Spread(Shape.TRIANGULAR, low, mode, high);
    }

    /** Returns a normal spread. */
    public static Spread normal(double mean, double deviation) {
        return new Spread(Shape.NORMAL, mean, deviation, mean);
    }

    /**
     * Returns a spread whose logarithm is normal.
     *
     * @param mean the mean of the value itself
     * @param deviation the standard deviation of its natural logarithm
     */
    public static Spread logNormal(double mean, double deviation) {
        return new Spread(Shape.LOG_NORMAL, mean, deviation, mean);
    }

    /** Returns the mean. */
    public double mean() {
        return switch (shape) {
            case FIXED, NORMAL, LOG_NORMAL -> low;
            case UNIFORM -> 0.5 * low + 0.5 * high;
            case TRIANGULAR -> (low + mode + high) / 3;
        };
    }

    /** Fills values from numbers that are spread evenly from 0 to below 1. */
    void fill(double[] uniform, double[] values) {
        switch (shape) {
            case FIXED -> Arrays.fill(values, low);
            case UNIFORM -> {
                for (int i = 0; i < values.length; i++) {
                    values[i] = low + (high - low) * uniform[i];
                }
            }
            case TRIANGULAR -> fillTriangle(uniform, values);
            default -> {
                for (int i = 0; i < values.length; i++) {
                    values[i] = Normal.quantile(uniform[i] + 0x1p-54);
                }
                fillFromNormal(values, values);
            }
        }
    }

    private void fillTriangle(double[] uniform, double[] values) {
        if (high == low) {
            Arrays.fill(values, low);
            return;
        }
        double width = high - low;
        double rising = width * (mode - low);
        double falling = width * (high - mode);
        double turn = (mode - low) / width;
        double least = low;
        double most = high;
        for (int i = 0; i < values.length; i++) {
            double u = uniform[i];
            boolean before = u < turn;
            double root = Math.sqrt(before ? u * rising : (1 - u) * falling);
            values[i] = before ? least + root : most - root;
        }
    }

    /** Fills values from numbers of a normal distribution of mean 0 and deviation 1. */
    void fillFromNormal(double[] z, double[] values) {
        if (shape == Shape.NORMAL) {
            for (int i = 0; i < values.length; i++) {
                values[i] = low + mode * z[i];
            }
        } else if (shape == Shape.LOG_NORMAL) {
            double shift = 0.5 * mode * mode;
            for (int i = 0; i < values.length; i++) {
                values[i] = low * Math.exp(mode * z[i] - shift);
            }
        } else {
            for (int i = 0; i < values.length; i++) {
                values[i] = Math.min(Normal.below(z[i]), 1 - 0x1p-53);
            }
            fill(values, values);
        }
    }

    @Override
    public String toString() {
        return switch (shape) {
            case FIXED -> Numbers.print(low);
            case UNIFORM -> Numbers.print(low) + " to " + Numbers.print(high);
            case TRIANGULAR -> Numbers.print(low) + " to " + Numbers.print(high) + ", likeliest " + Numbers.print(mode);
            case NORMAL -> Numbers.print(low) + " ± " + Numbers.print(mode) + " (normal)";
            case LOG_NORMAL -> Numbers.print(low) + " on average, its logarithm ± " + Numbers.print(mode) + " (normal)";
        };
    }
}

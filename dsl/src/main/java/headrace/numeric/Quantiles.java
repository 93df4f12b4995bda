package headrace.numeric;

import headrace.work.Work;
import java.util.Arrays;

/**
 * Quantiles of a sample, interpolated between the two nearest of its ordered values: the one at {@code p} stands at
 * place {@code (n − 1)·p} of n values counted from 0.
 *
 * <p>The values are not sorted as a whole: they are counted into parts of equal width, and only the part in which a
 * place falls is sorted.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Those of the values.
 *   <dt>Limits
 *   <dd>Finite values, at least one; shares from 0 to 1.
 *   <dt>Errors
 *   <dd>{@link IllegalArgumentException} for an empty sample, a share outside 0 to 1, or a value that is not finite.
 *   <dt>Source
 *   <dd>Definition 7 of Hyndman and Fan, The American Statistician 50 (1996).
 * </dl>
 */
public final class Quantiles {
    private static final int PARTS = 4096;

    private final double[] values;
    private final int count;
    private final double least;
    private final double perWidth;
    private final int[] ends = new int[PARTS];

    private Quantiles(double[] values, int count) {
        this.values = values;
        this.count = count;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            low = Math.min(low, values[i]);
            high = Math.max(high, values[i]);
        }
        if (count == 0 || !Double.isFinite(high - low)) {
            throw new IllegalArgumentException("No quantiles of " + count + " values from " + low + " to " + high);
        }
        least = low;
        double width = PARTS / (high - low);
        perWidth = Double.isFinite(width) ? width : 0;
        for (int i = 0; i < count; i++) {
            ends[part(values[i])]++;
        }
        for (int i = 1; i < PARTS; i++) {
            ends[i] += ends[i - 1];
        }
    }

    /** Returns the quantiles of the first values of an array, which must not change meanwhile. */
    public static Quantiles of(double[] values, int count) {
        return new Quantiles(values, count);
    }

    /** Returns the quantiles of values. */
    public static Quantiles of(double[] values) {
        return of(values, values.length);
    }

    /** Returns the value below which a share of the sample lies. */
    public double at(double share) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException("No quantile at " + share);
        }
        double place = (count - 1) * share;
        int below = (int) place;
        double rest = place - below;
        double lower = ordered(below);
        return rest == 0 ? lower : lower + (ordered(below + 1) - lower) * rest;
    }

    /** Returns the values below which some shares of the sample lie, in one pass over it, however many they are. */
    public double[] at(double[] shares) {
        double[][] sorted = new double[PARTS][];
        for (double share : shares) {
            int below = (int) ((count - 1) * share);
            for (int place = below; place <= Math.min(below + 1, count - 1); place++) {
                int part = partOf(place);
                sorted[part] = new double[ends[part] - before(part)];
            }
        }
        fill(sorted);
        double[] quantiles = new double[shares.length];
        for (int i = 0; i < shares.length; i++) {
            double place = (count - 1) * shares[i];
            int below = (int) place;
            double rest = place - below;
            double lower = ordered(sorted, below);
            quantiles[i] = rest == 0 ? lower : lower + (ordered(sorted, below + 1) - lower) * rest;
        }
        return quantiles;
    }

    private void fill(double[][] sorted) {
        int[] found = new int[PARTS];
        for (int i = 0; i < count; i++) {
            int part = part(values[i]);
            if (sorted[part] != null) {
                sorted[part][found[part]++] = values[i];
            }
        }
        for (double[] part : sorted) {
            if (part != null) {
                Arrays.sort(part);
            }
        }
    }

    private double ordered(double[][] sorted, int place) {
        int part = partOf(place);
        return sorted[part][place - before(part)];
    }

    private int before(int part) {
        return part == 0 ? 0 : ends[part - 1];
    }

    /** Returns the part in which a place falls: the first that ends behind it. */
    private int partOf(int place) {
        int low = -1;
        int high = PARTS - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (ends[middle] > place) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    private double ordered(int place) {
        Work.poll();
        int part = Arrays.binarySearch(ends, place + 1);
        if (part < 0) {
            part = -part - 1;
        }
        while (part > 0 && ends[part - 1] > place) {
            part--;
        }
        int before = part == 0 ? 0 : ends[part - 1];
        double[] there = new double[ends[part] - before];
        int found = 0;
        for (int i = 0; i < count; i++) {
            if (part(values[i]) == part) {
                there[found++] = values[i];
            }
        }
        Arrays.sort(there);
        return there[place - before];
    }

    private int part(double value) {
        return Math.min((int) ((value - least) * perWidth), PARTS - 1);
    }
}

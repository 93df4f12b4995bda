package headrace.numeric;

import org.hipparchus.special.Erf;

/** The normal distribution of mean 0 and standard deviation 1. */
public final class Normal {
    private Normal() {}

    /** Returns the probability of a value below this. */
    public static double below(double z) {
        return 0.5 * Erf.erfc(-z * Math.sqrt(0.5));
    }

    /**
     * Returns the value below which a value lies with this probability.
     *
     * @param probability above 0 and below 1
     */
    public static double quantile(double probability) {
        return -Math.sqrt(2) * Erf.erfcInv(2 * probability);
    }
}

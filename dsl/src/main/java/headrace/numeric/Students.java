package headrace.numeric;

import org.hipparchus.distribution.continuous.TDistribution;

/** Quantiles of Student's t. */
public final class Students {
    private Students() {}

    /**
     * Returns the factor by which a standard deviation is multiplied for a two-sided interval.
     *
     * @param confidence from 0 to 1
     * @param degreesOfFreedom above 0
     */
    public static double factor(double confidence, double degreesOfFreedom) {
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(0.5 + confidence / 2);
    }
}

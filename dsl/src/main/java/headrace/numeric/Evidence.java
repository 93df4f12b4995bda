package headrace.numeric;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * How well a sum of patterns of unknown size explains observations, as a Bayesian linear model with normal priors.
 *
 * <p>Observations and patterns are divided by the standard deviation of the observations and enter as sums of products
 * only, so that a million of them cost no more than ten. Values of a pattern's size are taken from a normal prior; a
 * size that can only be positive is allowed for by the share of its posterior that is.
 *
 * <p>Source: any textbook of Bayesian regression, such as Bishop, Pattern Recognition and Machine Learning, 2006,
 * section 3.5; the share of the posterior is the factor for a truncated prior, exact for one such pattern.
 */
public final class Evidence {
    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

    /** The least pattern is given a spread above 0, so that the posterior can be solved for. */
    private static final double LEAST_SPREAD = 1e-9;

    private static final double SYMMETRIC = 1e-9;
    private static final double SINGULAR = 1e-300;

    private final double logarithm;
    private final double[] sizes;
    private final double[] errors;

    private Evidence(double logarithm, double[] sizes, double[] errors) {
        this.logarithm = logarithm;
        this.sizes = sizes;
        this.errors = errors;
    }

    /**
     * The prior of a pattern's size.
     *
     * @param mean its mean
     * @param spread its standard deviation, not below 0
     * @param positive whether the size can only be above 0
     */
    public record Prior(double mean, double spread, boolean positive) {}

    /**
     * Returns the evidence for a set of priors.
     *
     * @param products the sums of products of the patterns with each other
     * @param observed the sums of products of the patterns with the observations
     * @param priors a prior for each pattern
     */
    public static Evidence of(double[][] products, double[] observed, Prior... priors) {
        int n = priors.length;
        RealVector means = new ArrayRealVector(n);
        RealVector spreads = new ArrayRealVector(n);
        for (int i = 0; i < n; i++) {
            means.setEntry(i, priors[i].mean());
            spreads.setEntry(i, Math.max(LEAST_SPREAD, priors[i].spread()));
        }
        RealMatrix gram = new Array2DRowRealMatrix(products);
        RealVector all = new ArrayRealVector(observed);
        RealVector pull = all.subtract(gram.operate(means)).ebeMultiply(spreads);
        CholeskyDecomposition inner = new CholeskyDecomposition(inner(products, spreads), SYMMETRIC, SINGULAR);
        RealVector solved = inner.getSolver().solve(pull);
        RealMatrix covariance = inner.getSolver().getInverse();
        // what the means alone explain, what the spread about them explains on top, and its price
        double logarithm = means.dotProduct(all)
                - means.dotProduct(gram.operate(means)) / 2
                + pull.dotProduct(solved) / 2
                - logDeterminant(inner) / 2;
        double[] sizes = means.add(spreads.ebeMultiply(solved)).toArray();
        double[] errors = new double[n];
        for (int i = 0; i < n; i++) {
            errors[i] = spreads.getEntry(i) * Math.sqrt(covariance.getEntry(i, i));
            logarithm += priors[i].positive() ? sign(sizes[i], errors[i], priors[i]) : 0;
        }
        return new Evidence(logarithm, sizes, errors);
    }

    private static RealMatrix inner(double[][] products, RealVector spreads) {
        int n = products.length;
        double[][] inner = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inner[i][j] = spreads.getEntry(i) * products[i][j] * spreads.getEntry(j) + (i == j ? 1 : 0);
            }
        }
        return new Array2DRowRealMatrix(inner);
    }

    /** Returns the logarithm of how much of the posterior is above 0, over how much of the prior is. */
    private static double sign(double size, double error, Prior prior) {
        double after = NORMAL.cumulativeProbability(size / error);
        double before = NORMAL.cumulativeProbability(prior.mean() / Math.max(LEAST_SPREAD, prior.spread()));
        return Math.log(Math.max(after, Double.MIN_NORMAL) / before);
    }

    private static double logDeterminant(CholeskyDecomposition cholesky) {
        RealMatrix lower = cholesky.getL();
        double sum = 0;
        for (int i = 0; i < lower.getRowDimension(); i++) {
            sum += 2 * Math.log(lower.getEntry(i, i));
        }
        return sum;
    }

    /** Returns the logarithm of the likelihood, less that of no pattern at all. */
    public double logarithm() {
        return logarithm;
    }

    /** Returns the most probable size of a pattern, counted from 0. */
    public double size(int pattern) {
        return sizes[pattern];
    }

    /** Returns the standard deviation of that size. */
    public double error(int pattern) {
        return errors[pattern];
    }
}

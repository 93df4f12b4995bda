package headrace.numeric;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * A polynomial fitted to points by weighted least squares, with what the points say about how sure it is.
 *
 * <p>The arguments are scaled by their largest, and the scaled system is solved by Householder QR, never by the normal
 * equations, which would square its condition. The fit keeps the triangle for its bands.
 *
 * <p>A weight is the inverse of a variance, up to a common factor. Residuals, leverages and deviations are those of the
 * weighted points.
 */
public final class PolynomialFit {
    /** Points that the curve meets within this share of the largest value are met exactly. */
    private static final double ROUNDING = 1e-12;

    private final Polynomial polynomial;
    private final double scale;
    private final double[][] triangle;
    private final double[] residuals;
    private final double[] leverages;
    private final double sumOfSquares;

    private PolynomialFit(double[] x, double[] y, double[] weights, int degree) {
        int n = x.length;
        int k = degree + 1;
        double reach = Arrays.stream(x).map(Math::abs).max().orElse(0);
        scale = reach == 0 ? 1 : reach;
        double[][] rows = new double[n][k];
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            double root = Math.sqrt(weights[i]);
            double power = root;
            for (int j = 0; j < k; j++) {
                rows[i][j] = power;
                power *= x[i] / scale;
            }
            right[i] = root * y[i];
        }
        QRDecomposition qr = new QRDecomposition(new Array2DRowRealMatrix(rows, false));
        RealMatrix q = qr.getQ();
        triangle = qr.getR().getSubMatrix(0, k - 1, 0, k - 1).getData();
        polynomial =
                Polynomial.of(backSubstituted(triangle, q.preMultiply(right))).ofScaled(1 / scale);
        residuals = new double[n];
        leverages = new double[n];
        double squares = 0;
        double size = 0;
        for (int i = 0; i < n; i++) {
            residuals[i] = right[i] - Math.sqrt(weights[i]) * polynomial.valueAt(x[i]);
            squares += residuals[i] * residuals[i];
            size = Math.max(size, Math.abs(right[i]));
            for (int j = 0; j < k; j++) {
                leverages[i] += q.getEntry(i, j) * q.getEntry(i, j);
            }
        }
        double rounding = ROUNDING * size;
        sumOfSquares = Math.max(squares, n * rounding * rounding);
    }

    /**
     * Returns the polynomial of a degree nearest the points.
     *
     * @param x the arguments, of which at least {@code degree + 1} differ
     * @param y the values
     * @param weights the weights, above 0
     */
    public static PolynomialFit of(double[] x, double[] y, double[] weights, int degree) {
        return new PolynomialFit(x, y, weights, degree);
    }

    private static double[] backSubstituted(double[][] upper, double[] right) {
        double[] solution = new double[upper.length];
        for (int i = upper.length - 1; i >= 0; i--) {
            double sum = right[i];
            for (int j = i + 1; j < upper.length; j++) {
                sum -= upper[i][j] * solution[j];
            }
            solution[i] = sum / upper[i][i];
        }
        return solution;
    }

    /** Returns the polynomial. */
    public Polynomial polynomial() {
        return polynomial;
    }

    /** Returns the number of points beyond the number of coefficients; 0 if the curve passes through all of them. */
    public int degreesOfFreedom() {
        return residuals.length - polynomial.degree() - 1;
    }

    /** Returns the weighted sum of the squared residuals, at least what rounding leaves. */
    public double sumOfSquares() {
        return sumOfSquares;
    }

    /** Returns the standard deviation of a point of weight 1 about the curve; wants degrees of freedom. */
    public double standardDeviation() {
        return Math.sqrt(sumOfSquares / degreesOfFreedom());
    }

    /** Returns the residual of a point, times the root of its weight. */
    public double residual(int point) {
        return residuals[point];
    }

    /**
     * Returns the corrected information criterion of Akaike, less constants that are the same for every degree;
     * infinite where there are too few points for its correction.
     */
    public double correctedInformationCriterion() {
        int n = residuals.length;
        int k = polynomial.degree() + 2;
        if (n - k - 1 <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        return n * Math.log(sumOfSquares / n) + 2 * k + 2.0 * k * (k + 1) / (n - k - 1);
    }

    /**
     * Returns the root mean square of the errors with which each point would be foretold by a fit to all others;
     * infinite where a point alone decides the curve.
     */
    public double leaveOneOut() {
        double sum = 0;
        for (int i = 0; i < residuals.length; i++) {
            double left = 1 - leverages[i];
            if (left < ROUNDING) {
                return Double.POSITIVE_INFINITY;
            }
            sum += residuals[i] / left * (residuals[i] / left);
        }
        return Math.sqrt(Math.max(sum, sumOfSquares) / residuals.length);
    }

    /**
     * Returns the residual of a point in standard deviations of a fit without it; 0 where that means nothing, because
     * fewer than two degrees of freedom are left or the point alone decides the curve.
     */
    public double studentisedDeletedResidual(int point) {
        double left = 1 - leverages[point];
        int freedom = degreesOfFreedom() - 1;
        if (freedom < 1 || left < ROUNDING) {
            return 0;
        }
        double own = residuals[point] * residuals[point] / left;
        double others = Math.max(sumOfSquares - own, ROUNDING * ROUNDING * sumOfSquares) / freedom;
        return residuals[point] / Math.sqrt(others * left);
    }

    /**
     * Returns the standard error of {@code level·f(x) + slope·f'(x)}, where f is the curve; wants degrees of freedom.
     *
     * @param x the argument
     * @param level how often the value counts
     * @param slope how often the slope counts
     */
    public double standardErrorOf(double x, double level, double slope) {
        return standardDeviation() * Math.sqrt(varianceFactor(x, level, slope));
    }

    /** Returns half the width of the band that holds the mean of many tests at x, with a confidence below 1. */
    public double meanHalfWidthAt(double x, double confidence) {
        return student(confidence) * standardErrorOf(x, 1, 0);
    }

    /** Returns half the width of the band that holds one more test at x, with a confidence below 1. */
    public double singleHalfWidthAt(double x, double confidence) {
        return student(confidence) * standardDeviation() * Math.sqrt(1 + varianceFactor(x, 1, 0));
    }

    /** Returns how many standard errors make half the width of a band of a confidence below 1. */
    public double student(double confidence) {
        return new TDistribution(degreesOfFreedom()).inverseCumulativeProbability(0.5 + confidence / 2);
    }

    /** Returns |R⁻ᵀφ|², the variance of a value and a slope of the curve in variances of a point of weight 1. */
    private double varianceFactor(double x, double level, double slope) {
        int k = triangle.length;
        double[] solution = new double[k];
        double power = 1;
        double lower = 0;
        double sum = 0;
        for (int i = 0; i < k; i++) {
            double right = level * power + slope * i * lower / scale;
            for (int j = 0; j < i; j++) {
                right -= triangle[j][i] * solution[j];
            }
            solution[i] = right / triangle[i][i];
            sum += solution[i] * solution[i];
            lower = power;
            power *= x / scale;
        }
        return sum;
    }
}

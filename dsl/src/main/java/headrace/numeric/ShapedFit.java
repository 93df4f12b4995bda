package headrace.numeric;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;

/**
 * A polynomial nearest the points among those that never rise, or are concave, or both, over the range of the points.
 *
 * <p>In Bernstein form a polynomial whose coefficients never increase never rises, and one whose coefficients have no
 * positive second difference is concave; up to degree 2 the reverse holds as well, above it the condition asks a little
 * more than the shape does. Written in differences of coefficients each condition is a bound at 0, and with so few
 * coefficients every choice of those held at their bound can be tried: the best allowed one is the answer.
 *
 * <p>Source: Farin, Curves and Surfaces for CAGD (Bernstein form); the search over faces is an exact form of bounded
 * least squares (Lawson and Hanson, Solving Least Squares Problems).
 *
 * @param polynomial the polynomial
 * @param sumOfSquares the weighted sum of the squared residuals
 * @param free the number of coefficients that were not held at a bound
 */
public record ShapedFit(Polynomial polynomial, double sumOfSquares, int free) {
    /** A difference below 0 by no more than this share of the largest value is rounding. */
    private static final double ROUNDING = 1e-12;

    /** Returns whether a condition held the curve away from the one nearest the points. */
    public boolean held() {
        return free <= polynomial.degree();
    }

    /**
     * Returns the nearest polynomial of a shape.
     *
     * @param points the points
     * @param degree the degree, from 1 to 4
     * @param neverRising whether it must not rise
     * @param concave whether it must be concave
     */
    public static ShapedFit of(Points points, int degree, boolean neverRising, boolean concave) {
        double[][] steps = steps(degree, concave);
        double[][] columns = new double[points.count()][degree + 1];
        double[] right = new double[points.count()];
        for (int i = 0; i < points.count(); i++) {
            double root = Math.sqrt(points.weights()[i]);
            for (int j = 0; j <= degree; j++) {
                columns[i][j] = root * bernstein(steps[j], points.share(i));
            }
            right[i] = root * points.y()[i];
        }
        int unbounded = unbounded(degree, neverRising, concave);
        Face best = null;
        int bounded = degree + 1 - unbounded;
        for (int held = 0; held < 1 << bounded; held++) {
            Face face = Face.solve(columns, right, held << unbounded);
            if (face.allowed(unbounded) && (best == null || face.squares < best.squares)) {
                best = face;
            }
        }
        return new ShapedFit(points.polynomial(combined(steps, best.solution)), best.squares, best.free);
    }

    private static int unbounded(int degree, boolean neverRising, boolean concave) {
        if (neverRising) {
            return 1;
        }
        return concave ? 2 : degree + 1;
    }

    /**
     * Bernstein coefficients of what one step adds: a level, then falls from each coefficient on; with concavity each
     * fall is repeated by all that follow.
     */
    private static double[][] steps(int degree, boolean concave) {
        double[][] steps = new double[degree + 1][degree + 1];
        Arrays.fill(steps[0], 1);
        for (int step = 1; step <= degree; step++) {
            for (int i = step; i <= degree; i++) {
                steps[step][i] = concave ? -(i - step + 1) : -1;
            }
        }
        return steps;
    }

    private static double bernstein(double[] coefficients, double t) {
        double[] c = coefficients.clone();
        for (int level = c.length - 1; level > 0; level--) {
            for (int i = 0; i < level; i++) {
                c[i] += t * (c[i + 1] - c[i]);
            }
        }
        return c[0];
    }

    private static double[] combined(double[][] steps, double[] amounts) {
        double[] coefficients = new double[steps.length];
        for (int j = 0; j < steps.length; j++) {
            for (int i = 0; i < steps.length; i++) {
                coefficients[i] += amounts[j] * steps[j][i];
            }
        }
        return coefficients;
    }

    /**
     * Points with weights above 0.
     *
     * @param x the arguments
     * @param y the values
     * @param weights the weights
     */
    public record Points(double[] x, double[] y, double[] weights) {
        int count() {
            return x.length;
        }

        private double low() {
            return Arrays.stream(x).min().orElseThrow();
        }

        private double high() {
            return Arrays.stream(x).max().orElseThrow();
        }

        double share(int i) {
            return (x[i] - low()) / (high() - low());
        }

        /** Turns Bernstein coefficients over the range of the points into powers of x, by their differences. */
        Polynomial polynomial(double[] bernstein) {
            int degree = bernstein.length - 1;
            double[] differences = bernstein.clone();
            double[] powers = new double[degree + 1];
            double choose = 1;
            for (int power = 0; power <= degree; power++) {
                powers[power] = choose * differences[0];
                for (int i = 0; i < degree - power; i++) {
                    differences[i] = differences[i + 1] - differences[i];
                }
                choose = choose * (degree - power) / (power + 1);
            }
            return Polynomial.of(powers).ofScaled(1 / (high() - low())).shiftedBy(low());
        }
    }

    /** The least squares with some steps held at 0. */
    private record Face(double[] solution, double squares, int free) {
        static Face solve(double[][] columns, double[] right, int held) {
            int all = columns[0].length;
            int[] kept =
                    IntStream.range(0, all).filter(j -> (held >> j & 1) == 0).toArray();
            double[][] rows = new double[columns.length][kept.length];
            for (int i = 0; i < rows.length; i++) {
                for (int j = 0; j < kept.length; j++) {
                    rows[i][j] = columns[i][kept[j]];
                }
            }
            double[] least = new QRDecomposition(new Array2DRowRealMatrix(rows, false))
                    .getSolver()
                    .solve(new ArrayRealVector(right, false))
                    .toArray();
            double[] solution = new double[all];
            for (int j = 0; j < kept.length; j++) {
                solution[kept[j]] = least[j];
            }
            double squares = 0;
            for (int i = 0; i < rows.length; i++) {
                double residual = right[i];
                for (int j = 0; j < kept.length; j++) {
                    residual -= rows[i][j] * least[j];
                }
                squares += residual * residual;
            }
            return new Face(solution, squares, kept.length);
        }

        boolean allowed(int unbounded) {
            double size = Arrays.stream(solution).map(Math::abs).max().orElse(0);
            return Arrays.stream(solution).skip(unbounded).allMatch(step -> step >= -ROUNDING * size);
        }
    }
}

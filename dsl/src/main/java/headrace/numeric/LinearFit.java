package headrace.numeric;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RRQRDecomposition;

/**
 * The coefficients of given terms whose sum lies nearest given values, by QR on columns of equal length; on request
 * with no coefficient below 0.
 *
 * <p>With a handful of terms every choice of those held at 0 can be tried; the best allowed one is the answer of
 * bounded least squares, exactly (Lawson and Hanson, Solving Least Squares Problems).
 */
public final class LinearFit {
    /** A pivot below this share of the largest says nothing. */
    private static final double NOTHING = 1e-6;

    /** A coefficient below 0 by no more than this share of the largest is rounding. */
    private static final double ROUNDING = 1e-12;

    private final double[] coefficients;
    private final double sumOfSquares;
    private final int points;

    private LinearFit(double[] coefficients, double sumOfSquares, int points) {
        this.coefficients = coefficients;
        this.sumOfSquares = sumOfSquares;
        this.points = points;
    }

    /**
     * Returns the nearest sum of the terms.
     *
     * @param terms the value of each term at each point: a row a point, at least as many as terms, of full rank
     * @param values the value at each point
     */
    public static LinearFit of(double[][] terms, double[] values) {
        return face(terms, values, 0);
    }

    /** Returns the nearest sum of the terms among those with no coefficient below 0; terms as in {@link #of}. */
    public static LinearFit nonNegative(double[][] terms, double[] values) {
        LinearFit best = null;
        for (int held = 0; held < 1 << terms[0].length; held++) {
            LinearFit face = face(terms, values, held);
            if (face.allowed() && (best == null || face.sumOfSquares < best.sumOfSquares)) {
                best = face;
            }
        }
        return best;
    }

    /** Returns how many of the terms the points can tell from each other. */
    public static int rank(double[][] terms) {
        return new RRQRDecomposition(new Array2DRowRealMatrix(scaled(terms, lengths(terms)), false)).getRank(NOTHING);
    }

    /** Returns the coefficient of a term, counted from 0. */
    public double coefficient(int term) {
        return coefficients[term];
    }

    /** Returns the number of coefficients that are not 0. */
    public int free() {
        int free = 0;
        for (double each : coefficients) {
            free += each == 0 ? 0 : 1;
        }
        return free;
    }

    /** Returns the root of the mean of the squared residuals. */
    public double residual() {
        return Math.sqrt(sumOfSquares / points);
    }

    private boolean allowed() {
        double largest = 0;
        for (double each : coefficients) {
            largest = Math.max(largest, Math.abs(each));
        }
        for (int i = 0; i < coefficients.length; i++) {
            if (coefficients[i] < -ROUNDING * largest) {
                return false;
            }
            coefficients[i] = Math.max(0, coefficients[i]);
        }
        return true;
    }

    /** Solves with the terms of a bit set held at 0. */
    private static LinearFit face(double[][] terms, double[] values, int held) {
        int all = terms[0].length;
        int free = all - Integer.bitCount(held);
        double[] found = new double[all];
        if (free > 0) {
            double[][] kept = new double[terms.length][free];
            for (int i = 0; i < terms.length; i++) {
                for (int j = 0, at = 0; j < all; j++) {
                    if ((held >> j & 1) == 0) {
                        kept[i][at++] = terms[i][j];
                    }
                }
            }
            double[] lengths = lengths(kept);
            double[] solved = new QRDecomposition(new Array2DRowRealMatrix(scaled(kept, lengths), false))
                    .getSolver()
                    .solve(new ArrayRealVector(values, false))
                    .toArray();
            for (int j = 0, at = 0; j < all; j++) {
                if ((held >> j & 1) == 0) {
                    found[j] = solved[at] / lengths[at++];
                }
            }
        }
        return new LinearFit(found, squares(terms, values, found), values.length);
    }

    private static double squares(double[][] terms, double[] values, double[] coefficients) {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            double off = values[i];
            for (int j = 0; j < coefficients.length; j++) {
                off -= coefficients[j] * terms[i][j];
            }
            sum += off * off;
        }
        return sum;
    }

    private static double[] lengths(double[][] terms) {
        double[] lengths = new double[terms[0].length];
        for (int j = 0; j < lengths.length; j++) {
            double sum = 0;
            for (double[] row : terms) {
                sum += row[j] * row[j];
            }
            lengths[j] = sum == 0 ? 1 : Math.sqrt(sum);
        }
        return lengths;
    }

    private static double[][] scaled(double[][] terms, double[] lengths) {
        double[][] scaled = new double[terms.length][lengths.length];
        for (int i = 0; i < terms.length; i++) {
            for (int j = 0; j < lengths.length; j++) {
                scaled[i][j] = terms[i][j] / lengths[j];
            }
        }
        return scaled;
    }
}

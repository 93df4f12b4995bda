package headrace.numeric;

import headrace.work.Work;
import java.util.Arrays;

/**
 * Many fits of equally many points of weight 1 at once, such as a test drawn again and again: each of the degree, from
 * 1 to 4, that the corrected information criterion prefers.
 *
 * <p>By orthogonal polynomials, in their recurrence of three terms, which give every degree in one pass; some dozens of
 * fits go through each step together, so that a processor does several at a time. The criterion alone decides here:
 * {@link DegreeChoice} is more careful.
 *
 * <p>Source: Forsythe, Journal of the Society for Industrial and Applied Mathematics 5 (1957).
 */
public final class FitBatch {
    private static final int BLOCK = 64;
    private static final int HIGHEST = 4;
    private static final double ROUNDING = 1e-12;

    private final int points;
    private final double[] scales;
    private final int[] degrees;
    private final double[] squares;
    private final double[] coefficients;

    private FitBatch(int points, int fits) {
        this.points = points;
        this.scales = new double[fits];
        this.degrees = new int[fits];
        this.squares = new double[fits];
        this.coefficients = new double[fits * (HIGHEST + 1)];
    }

    /**
     * Returns the fits.
     *
     * @param x the arguments, 0 or more, those of one fit after those of another; in each at least six of different
     *     value
     * @param y the values, in the same order
     * @param points how many points a fit has, eight or more
     */
    public static FitBatch of(double[] x, double[] y, int points) {
        if (points < HIGHEST + 4 || x.length != y.length || x.length % points != 0) {
            throw new IllegalArgumentException(
                    x.length + " arguments and " + y.length + " values in fits of " + points);
        }
        FitBatch batch = new FitBatch(points, x.length / points);
        Block block = new Block(points);
        for (int first = 0; first < batch.degrees.length; first += BLOCK) {
            Work.poll();
            block.fit(batch, x, y, first);
        }
        return batch;
    }

    /** Returns the number of fits. */
    public int fits() {
        return degrees.length;
    }

    /** Returns the degree of a fit. */
    public int degree(int fit) {
        return degrees[fit];
    }

    /** Returns the polynomial of a fit. */
    public Polynomial polynomial(int fit) {
        int first = fit * (HIGHEST + 1);
        double[] own = Arrays.copyOfRange(coefficients, first, first + degrees[fit] + 1);
        return Polynomial.of(own).ofScaled(1 / scales[fit]);
    }

    /** Returns the sum of the squared residuals of a fit, at least what rounding leaves. */
    public double sumOfSquares(int fit) {
        return squares[fit];
    }

    /** Returns the corrected information criterion of a fit, as {@link PolynomialFit} gives it. */
    public double criterion(int fit) {
        return points * Math.log(squares[fit] / points) + penalty(points, degrees[fit]);
    }

    private static double penalty(int points, int degree) {
        int k = degree + 2;
        return 2 * k + 2.0 * k * (k + 1) / (points - k - 1);
    }

    /** The working place of some dozens of fits: a row for each point, or each power, with a column for each fit. */
    private static final class Block {
        private final int points;
        private final double[] penalties = new double[HIGHEST + 1];
        private final double[][] x;
        private final double[][] residuals;
        private double[][] values;
        private double[][] before;
        private double[][] powers = new double[HIGHEST + 1][BLOCK];
        private double[][] powersBefore = new double[HIGHEST + 1][BLOCK];
        private final double[][] total = new double[HIGHEST + 1][BLOCK];
        private final double[] norm = new double[BLOCK];
        private final double[] normBefore = new double[BLOCK];
        private final double[] shift = new double[BLOCK];
        private final double[] back = new double[BLOCK];
        private final double[] amount = new double[BLOCK];
        private final double[] squares = new double[BLOCK];
        private final double[] score = new double[BLOCK];
        private final double[] least = new double[BLOCK];
        private final double[] rounding = new double[BLOCK];

        Block(int points) {
            this.points = points;
            x = new double[points][BLOCK];
            residuals = new double[points][BLOCK];
            values = new double[points][BLOCK];
            before = new double[points][BLOCK];
            for (int degree = 1; degree <= HIGHEST; degree++) {
                penalties[degree] = Math.exp(penalty(points, degree) / points);
            }
        }

        void fit(FitBatch batch, double[] allX, double[] allY, int first) {
            int count = Math.min(BLOCK, batch.degrees.length - first);
            load(batch, allX, allY, first, count);
            begin();
            for (int degree = 1; degree <= HIGHEST; degree++) {
                next(degree);
                addNext();
                keepBetter(batch, first, count, degree);
            }
        }

        private void load(FitBatch batch, double[] allX, double[] allY, int first, int count) {
            for (int b = 0; b < count; b++) {
                int from = (first + b) * points;
                double largest = 0;
                for (int p = 0; p < points; p++) {
                    largest = Math.max(largest, allX[from + p]);
                }
                batch.scales[first + b] = largest;
                for (int p = 0; p < points; p++) {
                    x[p][b] = allX[from + p] / largest;
                    residuals[p][b] = allY[from + p];
                }
            }
        }

        /** The mean, and how large the values are. */
        private void begin() {
            Arrays.fill(total[0], 0);
            Arrays.fill(rounding, 0);
            for (double[] row : residuals) {
                for (int b = 0; b < BLOCK; b++) {
                    total[0][b] += row[b] / points;
                    rounding[b] = Math.max(rounding[b], Math.abs(row[b]));
                }
            }
            for (int p = 0; p < points; p++) {
                subtract(residuals[p], total[0]);
                Arrays.fill(values[p], 1);
                Arrays.fill(before[p], 0);
            }
            for (int power = 0; power <= HIGHEST; power++) {
                Arrays.fill(powers[power], power == 0 ? 1 : 0);
                Arrays.fill(powersBefore[power], 0);
                if (power > 0) {
                    Arrays.fill(total[power], 0);
                }
            }
            Arrays.fill(norm, points);
            Arrays.fill(normBefore, Double.POSITIVE_INFINITY);
            Arrays.fill(least, Double.POSITIVE_INFINITY);
        }

        private static void subtract(double[] from, double[] what) {
            for (int b = 0; b < BLOCK; b++) {
                from[b] -= what[b];
            }
        }

        /** The next orthogonal polynomial: (x − shift)·this − back·the one before. */
        private void next(int degree) {
            Arrays.fill(shift, 0);
            for (int p = 0; p < points; p++) {
                double[] at = x[p];
                double[] value = values[p];
                for (int b = 0; b < BLOCK; b++) {
                    shift[b] += at[b] * value[b] * value[b];
                }
            }
            for (int b = 0; b < BLOCK; b++) {
                shift[b] /= norm[b];
                back[b] = norm[b] / normBefore[b];
                normBefore[b] = norm[b];
            }
            for (int p = 0; p < points; p++) {
                step(before[p], values[p], x[p]);
            }
            for (int power = degree; power >= 0; power--) {
                stepPower(power);
            }
            double[][] made = before;
            before = values;
            values = made;
            double[][] madePowers = powersBefore;
            powersBefore = powers;
            powers = madePowers;
        }

        private void step(double[] old, double[] value, double[] at) {
            for (int b = 0; b < BLOCK; b++) {
                old[b] = (at[b] - shift[b]) * value[b] - back[b] * old[b];
            }
        }

        private void stepPower(int power) {
            double[] old = powersBefore[power];
            double[] own = powers[power];
            double[] lower = power == 0 ? null : powers[power - 1];
            for (int b = 0; b < BLOCK; b++) {
                double fromLower = lower == null ? 0 : lower[b];
                old[b] = fromLower - shift[b] * own[b] - back[b] * old[b];
            }
        }

        /** Adds as much of the new polynomial as the residuals hold. */
        private void addNext() {
            Arrays.fill(norm, 0);
            Arrays.fill(amount, 0);
            for (int p = 0; p < points; p++) {
                double[] value = values[p];
                double[] residual = residuals[p];
                for (int b = 0; b < BLOCK; b++) {
                    norm[b] += value[b] * value[b];
                    amount[b] += value[b] * residual[b];
                }
            }
            for (int b = 0; b < BLOCK; b++) {
                amount[b] /= norm[b];
            }
            Arrays.fill(squares, 0);
            for (int p = 0; p < points; p++) {
                double[] value = values[p];
                double[] residual = residuals[p];
                for (int b = 0; b < BLOCK; b++) {
                    double left = residual[b] - amount[b] * value[b];
                    residual[b] = left;
                    squares[b] += left * left;
                }
            }
            for (int power = 0; power <= HIGHEST; power++) {
                double[] sum = total[power];
                double[] own = powers[power];
                for (int b = 0; b < BLOCK; b++) {
                    sum[b] += amount[b] * own[b];
                }
            }
        }

        /** The criterion is a logarithm of this score, which is enough to compare by. */
        private void keepBetter(FitBatch batch, int first, int count, int degree) {
            for (int b = 0; b < count; b++) {
                double nothing = ROUNDING * rounding[b];
                squares[b] = Math.max(squares[b], points * nothing * nothing);
                score[b] = squares[b] * penalties[degree];
                if (score[b] < least[b]) {
                    least[b] = score[b];
                    batch.degrees[first + b] = degree;
                    batch.squares[first + b] = squares[b];
                    int at = (first + b) * (HIGHEST + 1);
                    for (int power = 0; power <= degree; power++) {
                        batch.coefficients[at + power] = total[power][b];
                    }
                }
            }
        }
    }
}

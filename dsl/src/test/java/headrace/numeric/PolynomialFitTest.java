package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.fraction.BigFraction;
import org.hipparchus.fraction.BigFractionField;
import org.hipparchus.linear.Array2DRowFieldMatrix;
import org.hipparchus.linear.ArrayFieldVector;
import org.hipparchus.linear.FieldLUDecomposition;
import org.hipparchus.linear.FieldMatrix;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PolynomialFitTest {
    /** NIST Statistical Reference Datasets, Norris (from memory; that it gives the certified values confirms it). */
    private static final double[][] NORRIS = {
        {0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3},
        {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5},
        {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8},
        {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
        {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9},
        {0.2, 0.5}
    };

    /** The same source, Pontius: arguments of 1.5e5 to 3e6, each twice. */
    private static final double[] PONTIUS = {
        0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146, 1.20001, 1.30822,
        1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, 0.11052, 0.22018, 0.32939, 0.43886,
        0.54798, 0.65739, 0.76596, 0.87474, 0.98300, 1.09150, 1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965,
        1.84696, 1.95445, 2.06177, 2.16829
    };

    @Test
    void gives_the_certified_line_of_the_norris_data() {
        double[] x = Arrays.stream(NORRIS).mapToDouble(row -> row[1]).toArray();
        double[] y = Arrays.stream(NORRIS).mapToDouble(row -> row[0]).toArray();
        PolynomialFit fit = PolynomialFit.of(x, y, ones(x.length), 1);
        assertEquals(-0.262323073774029, fit.polynomial().coefficient(0), 1e-12);
        assertEquals(1.00211681802045, fit.polynomial().coefficient(1), 1e-14);
        assertEquals(0.884796396144373, fit.standardDeviation(), 1e-12);
        assertEquals(34, fit.degreesOfFreedom());
    }

    @Test
    void gives_the_certified_parabola_of_the_pontius_data() {
        double[] x = IntStream.range(0, 40)
                .mapToDouble(i -> 150_000.0 * (i % 20 + 1))
                .toArray();
        PolynomialFit fit = PolynomialFit.of(x, PONTIUS, ones(40), 2);
        assertEquals(0.673565789473684e-3, fit.polynomial().coefficient(0), 1e-15);
        assertEquals(0.732059160401003e-6, fit.polynomial().coefficient(1), 1e-19);
        assertEquals(-0.316081871345029e-14, fit.polynomial().coefficient(2), 1e-26);
        assertEquals(0.205177424076185e-3, fit.standardDeviation(), 1e-15);
    }

    /** NIST Statistical Reference Datasets, Wampler1 and Wampler2: certified coefficients, no residual. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.1})
    void gives_the_certified_quintics_of_the_wampler_data(double base) {
        double[] x = IntStream.rangeClosed(0, 20).mapToDouble(i -> i).toArray();
        Polynomial truth = Polynomial.of(
                IntStream.rangeClosed(0, 5).mapToDouble(i -> Math.pow(base, i)).toArray());
        double[] y = Arrays.stream(x).map(truth::valueAt).toArray();
        PolynomialFit fit = PolynomialFit.of(x, y, ones(21), 5);
        for (int i = 0; i <= 5; i++) {
            assertEquals(1, fit.polynomial().coefficient(i) / truth.coefficient(i), 1e-8);
        }
    }

    /** The normal equations in exact fractions are right to the last digit, however badly they are conditioned. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void agrees_with_the_solution_in_exact_fractions(int degree) {
        Random random = new Random(degree);
        double[] x = new double[12];
        double[] y = new double[12];
        double[] weights = new double[12];
        for (int i = 0; i < 12; i++) {
            x[i] = 0.003 * i + 0.001 * random.nextDouble();
            y[i] = 30 - 9000 * x[i] * x[i] + random.nextGaussian();
            weights[i] = 0.5 + random.nextDouble();
        }
        BigFraction[] exact = exact(x, y, weights, degree);
        PolynomialFit fit = PolynomialFit.of(x, y, weights, degree);
        for (int i = 0; i <= degree; i++) {
            double expected = exact[i].doubleValue();
            assertEquals(expected, fit.polynomial().coefficient(i), 1e-11 * Math.abs(expected));
        }
    }

    private static BigFraction[] exact(double[] x, double[] y, double[] weights, int degree) {
        FieldMatrix<BigFraction> normal =
                new Array2DRowFieldMatrix<>(BigFractionField.getInstance(), degree + 1, degree + 1);
        ArrayFieldVector<BigFraction> right = new ArrayFieldVector<>(BigFractionField.getInstance(), degree + 1);
        for (int i = 0; i <= degree; i++) {
            for (int j = 0; j <= degree; j++) {
                normal.setEntry(i, j, moment(x, ones(x.length), weights, i + j));
            }
            right.setEntry(i, moment(x, y, weights, i));
        }
        return new FieldLUDecomposition<>(normal).getSolver().solve(right).toArray();
    }

    private static BigFraction moment(double[] x, double[] y, double[] weights, int power) {
        BigFraction sum = BigFraction.ZERO;
        for (int i = 0; i < x.length; i++) {
            BigFraction term = new BigFraction(x[i]).pow(power);
            sum = sum.add(term.multiply(new BigFraction(y[i])).multiply(new BigFraction(weights[i])));
        }
        return sum;
    }

    @Test
    void counts_a_point_of_weight_two_as_two_points() {
        double[] x = {0, 1, 2, 3, 4, 4};
        double[] y = {1, 3, 2, 5, 4, 4};
        PolynomialFit repeated = PolynomialFit.of(x, y, ones(6), 2);
        PolynomialFit weighted = PolynomialFit.of(
                new double[] {0, 1, 2, 3, 4}, new double[] {1, 3, 2, 5, 4}, new double[] {1, 1, 1, 1, 2}, 2);
        assertEquals(repeated.polynomial().valueAt(2.5), weighted.polynomial().valueAt(2.5), 1e-13);
        assertEquals(repeated.sumOfSquares(), weighted.sumOfSquares(), 1e-13);
    }

    /** Leaves each point out in turn and fits again: what the short cuts by leverage must equal. */
    @Test
    void foretells_each_point_as_a_fit_without_it_does() {
        double[] x = {0, 1, 2.5, 3, 4, 5.5, 7, 8};
        double[] y = {30, 29.5, 29, 27.4, 26, 23.1, 17.8, 14.2};
        PolynomialFit all = PolynomialFit.of(x, y, ones(8), 2);
        double squares = 0;
        for (int left = 0; left < 8; left++) {
            int without = left;
            int[] kept = IntStream.range(0, 8).filter(i -> i != without).toArray();
            PolynomialFit fit = PolynomialFit.of(at(x, kept), at(y, kept), ones(7), 2);
            double error = y[left] - fit.polynomial().valueAt(x[left]);
            squares += error * error;
            double t975 = 2.776445105198;
            double deviation = fit.singleHalfWidthAt(x[left], 0.95) / t975;
            assertEquals(error / deviation, all.studentisedDeletedResidual(left), 1e-9);
        }
        assertEquals(Math.sqrt(squares / 8), all.leaveOneOut(), 1e-12);
    }

    private static double[] at(double[] values, int[] kept) {
        return Arrays.stream(kept).mapToDouble(i -> values[i]).toArray();
    }

    /**
     * Worked by hand: y = 1, 3, 2, 4 at x = 0, 1, 2, 3 gives the line 1.3 + 0.8x with residuals −0.3, 0.9, −0.9, 0.3,
     * so s² = 1.8/2, t(0.975; 2) = 4.302653; at the mean of x the mean band is t·s/√4, at x = 3 the factor is 1/4 +
     * 1.5²/5.
     */
    @Test
    void states_the_bands_worked_by_hand() {
        PolynomialFit fit = PolynomialFit.of(new double[] {0, 1, 2, 3}, new double[] {1, 3, 2, 4}, ones(4), 1);
        double t = 4.302652729911;
        assertEquals(1.3, fit.polynomial().coefficient(0), 1e-14);
        assertEquals(0.8, fit.polynomial().coefficient(1), 1e-14);
        assertEquals(Math.sqrt(0.9), fit.standardDeviation(), 1e-14);
        assertEquals(0.9, fit.residual(1), 1e-14);
        assertEquals(t * Math.sqrt(0.9 / 4), fit.meanHalfWidthAt(1.5, 0.95), 1e-9);
        assertEquals(t * Math.sqrt(0.9 * 0.7), fit.meanHalfWidthAt(3, 0.95), 1e-9);
        assertEquals(t * Math.sqrt(0.9 * 1.7), fit.singleHalfWidthAt(3, 0.95), 1e-9);
    }

    /** n = 6, degree 1: k = 3, so the criterion is 6·ln(RSS/6) + 6 + 24/2. */
    @Test
    void corrects_the_information_criterion_for_few_points() {
        double[] x = {0, 1, 2, 3, 4, 5};
        double[] y = {0, 1, 0, 1, 0, 1};
        PolynomialFit fit = PolynomialFit.of(x, y, ones(6), 1);
        double expected = 6 * Math.log(fit.sumOfSquares() / 6) + 6 + 12;
        assertEquals(expected, fit.correctedInformationCriterion(), 1e-12);
    }

    @Test
    void leaves_a_degree_out_of_the_choice_where_the_correction_would_divide_by_nothing() {
        double[] x = {0, 1, 2, 3, 4, 5};
        double[] y = {0, 1, 0, 1, 0, 1};
        assertEquals(
                Double.POSITIVE_INFINITY, PolynomialFit.of(x, y, ones(6), 3).correctedInformationCriterion());
        assertEquals(
                Double.POSITIVE_INFINITY, PolynomialFit.of(x, y, ones(6), 4).correctedInformationCriterion());
    }

    @Test
    void says_nothing_of_a_point_that_alone_decides_the_curve() {
        double[] x = {0, 0, 0, 0, 0, 9};
        double[] y = {1, 1.1, 0.9, 1, 1.05, 7};
        PolynomialFit fit = PolynomialFit.of(x, y, ones(6), 1);
        assertEquals(Double.POSITIVE_INFINITY, fit.leaveOneOut());
        assertEquals(0, fit.studentisedDeletedResidual(5));
        PolynomialFit full = PolynomialFit.of(new double[] {0, 1, 2}, new double[] {0, 1, 4}, ones(3), 1);
        assertEquals(0, full.studentisedDeletedResidual(1));
    }

    @Test
    void does_not_divide_by_the_nothing_that_exact_points_leave() {
        double[] x = {0, 1, 2, 3, 4, 5, 6};
        PolynomialFit fit = PolynomialFit.of(x, x, ones(7), 1);
        for (int i = 0; i < 7; i++) {
            assertEquals(0, fit.studentisedDeletedResidual(i), 10);
        }
        assertEquals(0, fit.standardDeviation(), 1e-10);
        PolynomialFit nothing = PolynomialFit.of(new double[7], new double[7], ones(7), 0);
        assertEquals(0, nothing.polynomial().valueAt(3), 0.0);
    }

    private static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }

    /**
     * For the line through the four points above the covariance is s²·(XᵀX)⁻¹ with XᵀX = (4, 6; 6, 14) and determinant
     * 20: var c₀ = 0.9·14/20, var c₁ = 0.9·4/20, cov = −0.9·6/20. At x = 2, 3·f + 5·f' = 3·c₀ + 11·c₁.
     */
    @Test
    void states_the_standard_error_of_a_value_and_a_slope_together() {
        PolynomialFit fit = PolynomialFit.of(new double[] {0, 1, 2, 3}, new double[] {1, 3, 2, 4}, ones(4), 1);
        double variance = 0.9 / 20 * (9 * 14 - 2 * 3 * 11 * 6 + 121 * 4);
        assertEquals(Math.sqrt(variance), fit.standardErrorOf(2, 3, 5), 1e-12);
        double opposite = 0.9 / 20 * (9 * 14 - 2 * 3 * 1 * 6 + 4);
        assertEquals(Math.sqrt(opposite), fit.standardErrorOf(2, 3, -5), 1e-12);
        assertEquals(4.302652729911, fit.student(0.95), 1e-9);
    }

    /** The slope of a parabola at x is c₁ + 2·x·c₂, whose error is that of the parabola's value differentiated. */
    @Test
    void states_the_standard_error_of_a_slope_as_the_limit_of_differences() {
        double[] x = {0, 1, 2.5, 3, 4, 5.5, 7, 8};
        double[] y = {30, 29.5, 29, 27.4, 26, 23.1, 17.8, 14.2};
        PolynomialFit fit = PolynomialFit.of(x, y, ones(8), 3);
        double step = 1e-3;
        PolynomialFit shifted =
                PolynomialFit.of(Arrays.stream(x).map(v -> v - 4.4).toArray(), y, ones(8), 3);
        assertEquals(shifted.standardErrorOf(0, 0, 1), fit.standardErrorOf(4.4, 0, 1), 1e-10);
        assertEquals(shifted.standardErrorOf(step, 1, 0), fit.standardErrorOf(4.4 + step, 1, 0), 1e-10);
    }
}

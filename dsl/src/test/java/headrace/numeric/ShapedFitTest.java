package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ShapedFitTest {
    /** Noisy points of a drooping curve, with a wave: no shape is given for nothing. */
    private static ShapedFit.Points points(int seed) {
        Random random = new Random(seed);
        double[] x = new double[11];
        double[] y = new double[11];
        double[] weights = new double[11];
        for (int i = 0; i < 11; i++) {
            x[i] = 3 + 4.0 * i;
            double t = i / 10.0;
            y[i] = 20 + 6 * t - 14 * t * t + Math.sin(7 * t) + 0.3 * random.nextGaussian();
            weights[i] = 0.5 + random.nextDouble();
        }
        return new ShapedFit.Points(x, y, weights);
    }

    @ParameterizedTest
    @CsvSource({
        "1, true, false",
        "2, true, false",
        "3, true, false",
        "4, true, false",
        "2, false, true",
        "3, false, true",
        "4, false, true",
        "2, true, true",
        "3, true, true",
        "4, true, true"
    })
    void keeps_its_shape_at_a_thousand_points(int degree, boolean neverRising, boolean concave) {
        for (int seed = 0; seed < 20; seed++) {
            Polynomial curve =
                    ShapedFit.of(points(seed), degree, neverRising, concave).polynomial();
            Polynomial bend = curve.derivative().derivative();
            for (int i = 0; i <= 1000; i++) {
                double x = 3 + 0.04 * i;
                assertTrue(!neverRising || curve.slopeAt(x) <= 1e-9, "rises at " + x);
                assertTrue(!concave || bend.valueAt(x) <= 1e-9, "is not concave at " + x);
            }
        }
    }

    @Test
    void is_the_free_fit_where_the_points_have_the_shape_already() {
        double[] x = {0, 1, 2, 3, 4, 5, 6};
        double[] y = {30, 29.4, 27.9, 25.1, 22, 17.3, 12.1};
        double[] weights = {1, 2, 1, 1, 3, 1, 1};
        for (boolean concave : new boolean[] {true, false}) {
            ShapedFit shaped = ShapedFit.of(new ShapedFit.Points(x, y, weights), 2, true, concave);
            PolynomialFit free = PolynomialFit.of(x, y, weights, 2);
            assertFalse(shaped.held());
            assertEquals(free.sumOfSquares(), shaped.sumOfSquares(), 1e-11);
            for (double at : x) {
                assertEquals(free.polynomial().valueAt(at), shaped.polynomial().valueAt(at), 1e-11);
            }
        }
    }

    @Test
    void without_a_shape_is_the_free_fit() {
        ShapedFit.Points points = points(3);
        ShapedFit shaped = ShapedFit.of(points, 4, false, false);
        PolynomialFit free = PolynomialFit.of(points.x(), points.y(), points.weights(), 4);
        assertFalse(shaped.held());
        assertEquals(free.sumOfSquares(), shaped.sumOfSquares(), 1e-9);
    }

    /** The best line that does not rise through rising points is level, at their weighted mean: (1 + 2·2 + 6)/4. */
    @Test
    void holds_a_rising_line_level_at_the_mean() {
        ShapedFit level = ShapedFit.of(
                new ShapedFit.Points(new double[] {0, 1, 2}, new double[] {1, 2, 6}, new double[] {1, 2, 1}),
                1,
                true,
                false);
        assertTrue(level.held());
        assertEquals(1, level.free());
        assertEquals(2.75, level.polynomial().valueAt(0.3), 1e-13);
        assertEquals(0, level.polynomial().coefficient(1), 1e-13);
    }

    /** A parabola with its top at 0 is the best of those that do not rise, found by fitting 1 and x² alone. */
    @Test
    void holds_the_top_of_a_drooping_parabola_at_the_first_point() {
        double[] x = {0, 1, 2, 3, 4, 5};
        double[] y = {20, 20.6, 20.1, 18.2, 14.9, 10.1};
        ShapedFit shaped = ShapedFit.of(new ShapedFit.Points(x, y, ones(6)), 2, true, false);
        PolynomialFit byHand = PolynomialFit.of(Arrays.stream(x).map(v -> v * v).toArray(), y, ones(6), 1);
        assertTrue(shaped.held());
        assertEquals(byHand.polynomial().coefficient(0), shaped.polynomial().coefficient(0), 1e-11);
        assertEquals(0, shaped.polynomial().coefficient(1), 1e-11);
        assertEquals(byHand.polynomial().coefficient(1), shaped.polynomial().coefficient(2), 1e-11);
    }

    /** No parabola of the shape that lies near the answer does better. */
    @Test
    void is_the_nearest_of_its_shape() {
        Random random = new Random(1);
        for (int seed = 0; seed < 20; seed++) {
            ShapedFit.Points points = points(seed);
            ShapedFit shaped = ShapedFit.of(points, 2, true, true);
            for (int trial = 0; trial < 500; trial++) {
                Polynomial other = shaped.polynomial()
                        .plus(Polynomial.of(
                                random.nextGaussian() * 0.1,
                                random.nextGaussian() * 0.01,
                                random.nextGaussian() * 0.001));
                boolean allowed = other.slopeAt(3) <= 0 && other.slopeAt(43) <= 0 && other.coefficient(2) <= 0;
                assertTrue(!allowed || squares(points, other) >= shaped.sumOfSquares() * (1 - 1e-12));
            }
        }
    }

    private static double squares(ShapedFit.Points points, Polynomial curve) {
        double squares = 0;
        for (int i = 0; i < points.x().length; i++) {
            double residual = points.y()[i] - curve.valueAt(points.x()[i]);
            squares += points.weights()[i] * residual * residual;
        }
        return squares;
    }

    private static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }
}

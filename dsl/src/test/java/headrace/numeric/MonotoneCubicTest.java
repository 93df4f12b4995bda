package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MonotoneCubicTest {
    /** The data of Fritsch and Carlson (1980), table 1, from memory; only their monotony is used. */
    private static final double[] X = {7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20};

    private static final double[] Y = {
        0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.943740, 0.998636, 0.999919, 0.999994
    };

    @Test
    void passes_through_every_point() {
        MonotoneCubic curve = MonotoneCubic.through(X, Y);
        for (int i = 0; i < X.length; i++) {
            assertEquals(Y[i], curve.valueAt(X[i]), 1e-15);
        }
    }

    @Test
    void rises_nowhere_that_its_points_do_not() {
        Random random = new Random(5);
        for (int trial = 0; trial < 200; trial++) {
            double[] x = new double[9];
            double[] y = new double[9];
            for (int i = 1; i < 9; i++) {
                x[i] = x[i - 1] + 0.01 + random.nextDouble();
                y[i] = y[i - 1] - (random.nextInt(4) == 0 ? 0 : Math.pow(random.nextDouble(), 4));
            }
            assertFalling(MonotoneCubic.through(x, y), x[0], x[8]);
        }
        assertFalling(MonotoneCubic.through(X, Y).times(-1), 7.99, 20);
    }

    private static void assertFalling(SmoothCurve curve, double low, double high) {
        double before = curve.valueAt(low);
        for (int i = 1; i <= 1000; i++) {
            double value = curve.valueAt(low + (high - low) * i / 1000);
            assertTrue(value <= before + 1e-14, "rises at step " + i);
            before = value;
        }
    }

    @Test
    void turns_only_at_its_points() {
        MonotoneCubic curve = MonotoneCubic.through(new double[] {0, 1, 2, 3}, new double[] {5, 6, 4, 4});
        assertEquals(6, curve.valueAt(1));
        assertEquals(0, curve.slopeAt(1));
        assertEquals(4, curve.valueAt(2.5));
        assertTrue(curve.valueAt(0.9) < 6 && curve.valueAt(1.1) < 6);
    }

    @Test
    void draws_a_straight_line_through_points_on_one() {
        MonotoneCubic line = MonotoneCubic.through(new double[] {0, 1, 4}, new double[] {9, 7, 1});
        for (double x : new double[] {-1, 0.3, 2, 3.9, 6}) {
            assertEquals(9 - 2 * x, line.valueAt(x), 1e-14);
            assertEquals(-2, line.slopeAt(x), 1e-14);
        }
    }

    @Test
    void has_neither_jump_nor_kink() {
        MonotoneCubic curve = MonotoneCubic.through(X, Y);
        for (double x : X) {
            assertEquals(curve.valueAt(x - 1e-9), curve.valueAt(x + 1e-9), 1e-8);
            assertEquals(curve.slopeAt(x - 1e-9), curve.slopeAt(x + 1e-9), 1e-6);
        }
    }

    @Test
    void is_the_same_in_pieces() {
        MonotoneCubic curve = MonotoneCubic.through(X, Y);
        for (double x = 7; x < 22; x += 0.0917) {
            assertEquals(curve.valueAt(x), curve.pieceAt(x).valueAt(x), 1e-9);
            assertEquals(curve.slopeAt(x), curve.pieceAt(x).slopeAt(x), 1e-9);
        }
        assertEquals(3, curve.degree());
        assertArrayEquals(new double[] {9.2, 10}, curve.breaksIn(8.7, 12));
    }

    @Test
    void is_scaled_along_both_axes() {
        MonotoneCubic curve = MonotoneCubic.through(X, Y);
        for (double x = 7; x < 22; x += 0.31) {
            assertEquals(3 * curve.valueAt(x), curve.times(3).valueAt(x), 1e-14);
            assertEquals(curve.valueAt(2 * x), curve.ofScaled(2).valueAt(x), 1e-12);
            assertEquals(2 * curve.slopeAt(2 * x), curve.ofScaled(2).slopeAt(x), 1e-12);
        }
    }

    @Test
    void finds_the_arguments_of_a_value_across_its_pieces() {
        MonotoneCubic curve = MonotoneCubic.through(new double[] {0, 1, 2, 3, 4}, new double[] {5, 6, 4, 5, 1});
        double[] found = curve.argumentsOf(4.5, 0, 4);
        assertEquals(3, found.length);
        for (double x : found) {
            assertEquals(4.5, curve.valueAt(x), 1e-12);
        }
        assertArrayEquals(new double[] {1, 2, 3}, curve.stationaryIn(0.5, 3.5), 1e-12);
        assertArrayEquals(new double[] {2}, curve.argumentsOf(4, 1.5, 3), 1e-12);
    }
}

package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PolynomialTest {
    /** 2 − 3x + x²: by hand 0 at 1 and 2, −1/4 at 3/2. */
    private static final Polynomial HAND = Polynomial.of(2, -3, 1);

    @Test
    void gives_the_values_and_slopes_worked_by_hand() {
        assertEquals(-0.25, HAND.valueAt(1.5));
        assertEquals(12, HAND.valueAt(-2));
        assertEquals(-7, HAND.slopeAt(-2));
        assertEquals(Polynomial.of(-3, 2), HAND.derivative());
        assertEquals(2, HAND.degree());
        assertEquals(-3, HAND.coefficient(1));
        assertEquals(0, HAND.coefficient(7));
    }

    @Test
    void adds_multiplies_scales_and_shifts_as_its_values_do() {
        Polynomial other = Polynomial.of(1, 0, 0, 4);
        for (double x : new double[] {-3, -0.5, 0, 2}) {
            assertEquals(HAND.valueAt(x) + other.valueAt(x), HAND.plus(other).valueAt(x));
            assertEquals(HAND.valueAt(x) + other.valueAt(x), other.plus(HAND).valueAt(x));
            assertEquals(HAND.valueAt(x) * other.valueAt(x), HAND.times(other).valueAt(x));
            assertEquals(5 * HAND.valueAt(x), HAND.times(5).valueAt(x));
            assertEquals(HAND.valueAt(3 * x), HAND.ofScaled(3).valueAt(x));
            assertEquals(other.valueAt(x - 2), other.shiftedBy(2).valueAt(x));
        }
    }

    @Test
    void is_made_of_one_piece() {
        assertEquals(HAND, HAND.pieceAt(7));
        assertEquals(0, HAND.breaksIn(-10, 10).length);
    }

    @Test
    void without_coefficients_is_nothing() {
        assertEquals(Polynomial.of(0), Polynomial.of());
        assertEquals(Polynomial.of(0), Polynomial.of(5).derivative());
    }

    @Test
    void keeps_its_coefficients_to_itself() {
        double[] given = {1, 2};
        Polynomial made = Polynomial.of(given);
        given[0] = 9;
        made.coefficients()[1] = 9;
        assertEquals(Polynomial.of(1, 2), made);
        assertEquals(Polynomial.of(1, 2).hashCode(), made.hashCode());
        assertNotEquals(Polynomial.of(1, 3), made);
        assertEquals("[1.0, 2.0]", made.toString());
    }

    @Test
    void finds_roots_at_the_ends_and_where_it_only_touches() {
        assertArrayEquals(new double[] {1, 2}, HAND.rootsIn(1, 2));
        assertArrayEquals(new double[] {2}, HAND.rootsIn(1.5, 9), 1e-15);
        assertArrayEquals(new double[0], HAND.rootsIn(2.5, 9));
        assertArrayEquals(new double[] {3}, Polynomial.of(9, -6, 1).rootsIn(0, 10), 1e-12);
        assertArrayEquals(new double[] {0}, Polynomial.of(0, 0, 0, 5).rootsIn(-1, 1), 1e-12);
        assertArrayEquals(new double[0], Polynomial.of(1, 0, 1).rootsIn(-9, 9));
    }

    @Test
    void that_is_nothing_everywhere_has_no_root_to_name() {
        assertEquals(0, Polynomial.of(0, 0).rootsIn(0, 1).length);
        assertEquals(0, HAND.rootsIn(9, 1).length);
    }

    /** Polynomials of degree 1 to 8 built from known roots at least 0.05 apart: all are found, and no other. */
    @Test
    void finds_every_root_and_no_other() {
        Random random = new Random(11);
        for (int trial = 0; trial < 500; trial++) {
            int degree = 1 + trial % 8;
            double[] roots = new double[degree];
            Polynomial product = Polynomial.of(random.nextBoolean() ? 7 : -0.3);
            double at = random.nextDouble();
            for (int i = 0; i < degree; i++) {
                roots[i] = at;
                product = product.times(Polynomial.of(-at, 1));
                at += 0.05 + random.nextDouble() * 0.3;
            }
            assertArrayEquals(roots, product.rootsIn(0, 4), 1e-7, Arrays.toString(roots));
        }
    }

    @Test
    void is_asked_for_its_arguments_and_stationary_points_as_any_curve() {
        assertArrayEquals(new double[] {0, 3}, HAND.argumentsOf(2, 0, 5), 1e-14);
        assertArrayEquals(new double[] {1.5}, HAND.stationaryIn(0, 5), 1e-14);
    }

    @Test
    void a_root_is_refused_where_the_sign_does_not_change() {
        assertEquals(1, Roots.between(HAND::valueAt, 1, 1.5));
        assertEquals(2, Roots.between(HAND::valueAt, 1.5, 2));
        assertEquals(Math.cbrt(2), Roots.between(x -> x * x * x - 2, -5, 9), 1e-15);
        assertEquals(Math.cbrt(2), Roots.between(x -> 2 - x * x * x, -5, 9), 1e-15);
        assertThrows(IllegalArgumentException.class, () -> Roots.between(HAND::valueAt, 3, 4));
        assertThrows(IllegalArgumentException.class, () -> Roots.between(x -> Double.NaN, 3, 4));
    }

    @Test
    void any_smooth_function_turns_where_its_stops_say() {
        double[] stops = Roots.stopsIn(Math::sin, 0, 10);
        for (int i = 1; i < stops.length; i++) {
            double middle = Math.sin(0.5 * (stops[i - 1] + stops[i]));
            double low = Math.min(Math.sin(stops[i - 1]), Math.sin(stops[i]));
            double high = Math.max(Math.sin(stops[i - 1]), Math.sin(stops[i]));
            assertTrue(middle >= low && middle <= high, "turns between stops " + i);
        }
        assertEquals(129 + 3, stops.length);
        assertEquals(0, stops[0]);
        assertEquals(10, stops[131]);
        double nearest =
                Arrays.stream(stops).map(x -> Math.abs(x - Math.PI / 2)).min().orElseThrow();
        assertEquals(0, nearest, 1e-7);
        assertEquals(129, Roots.stopsIn(x -> x, 0, 1).length);
    }
}

package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RootScanTest {
    @Test
    void finds_every_root_in_order() {
        double[] roots = RootScan.between(x -> (x - 0.3) * (x - 1.1) * (x - 2.7), 0, 3);
        assertArrayEquals(new double[] {0.3, 1.1, 2.7}, roots, 1e-14);
    }

    @Test
    void finds_roots_at_both_ends_of_the_range_and_on_its_grid() {
        assertArrayEquals(new double[] {0, 256, 512}, RootScan.between(x -> x * (x - 256) * (x - 512), 0, 512), 1e-12);
    }

    /** Two roots a hundredth of an interval apart, from above and from below. */
    @Test
    void finds_two_roots_close_together() {
        double half = 1e-5;
        double[] fromAbove = RootScan.between(x -> (x - 0.7) * (x - 0.7) - half * half, 0, 1);
        assertArrayEquals(new double[] {0.7 - half, 0.7 + half}, fromAbove, 1e-11);
        double[] fromBelow = RootScan.between(x -> half * half - (x - 0.7) * (x - 0.7), 0, 1);
        assertArrayEquals(fromAbove, fromBelow, 1e-11);
    }

    @Test
    void finds_a_root_that_only_touches() {
        assertArrayEquals(new double[] {0.7123}, RootScan.between(x -> (x - 0.7123) * (x - 0.7123), 0, 1), 1e-6);
    }

    @Test
    void finds_each_root_once_where_two_grid_points_are_equally_near() {
        double middle = 10.5 / 512;
        double half = 1e-6;
        double[] roots = RootScan.between(x -> (x - middle) * (x - middle) - half * half, 0, 1);
        assertArrayEquals(new double[] {middle - half, middle + half}, roots, 1e-10);
    }

    @Test
    void finds_nothing_where_there_is_nothing() {
        assertEquals(0, RootScan.between(x -> x * x + 1e-3, -1, 1).length);
        assertEquals(0, RootScan.between(Math::exp, -1, 1).length);
    }
}

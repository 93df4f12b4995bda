package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.numeric.Evidence.Prior;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TrendNumericsTest {
    /**
     * By hand: x 1, 2, 3, 4 and y 2, 3, 5, 6 have means 2.5 and 4, Sxx 5, Sxy 7, Syy 10; slope 1.4, intercept 0.5, rest
     * 10 − 1.4·7 = 0.2, variance 0.1.
     */
    @Test
    void a_straight_line_through_four_points_is_the_one_worked_by_hand() {
        StraightLine line = StraightLine.through(new double[] {1, 2, 3, 4, 99}, new double[] {2, 3, 5, 6, -99}, 4);
        assertEquals(1.4, line.slope(), 1e-14);
        assertEquals(0.5, line.intercept(), 1e-14);
        assertEquals(Math.sqrt(0.1), line.residual(), 1e-14);
        assertEquals(Math.sqrt(0.1 / 5), line.slopeError(), 1e-14);
        assertEquals(Math.sqrt(0.1 * (0.25 + 6.25 / 5)), line.interceptError(), 1e-14);
        assertEquals(7.5, line.at(5), 1e-13);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void a_change_point_is_found_again_on_either_side(boolean right) {
        double[] x = IntStream.range(0, 400).mapToDouble(i -> 0.1 * i - 5).toArray();
        double[] y = IntStream.range(0, 400)
                .mapToDouble(i -> 3 + 0.7 * Math.max(0, right ? x[i] - 12.34 : 12.34 - x[i]))
                .toArray();
        ChangePoint found = ChangePoint.of(x, y);
        assertEquals(right, found.right());
        assertEquals(12.34, found.point(), 1e-3);
        assertEquals(3, found.base(), 1e-3);
        assertEquals(0.7, found.slope(), 1e-3);
        assertEquals(3 + 0.7 * 2, found.at(right ? 14.34 : 10.34), 2e-3);
    }

    @Test
    void a_straight_run_is_a_change_point_at_its_end() {
        double[] x = IntStream.range(0, 100).mapToDouble(i -> i).toArray();
        double[] y = IntStream.range(0, 100).mapToDouble(i -> 5 + 2 * i).toArray();
        ChangePoint found = ChangePoint.of(x, y);
        for (int i = 0; i < 100; i += 9) {
            assertEquals(y[i], found.at(i), 1e-6 * y[99]);
        }
    }

    /** Several shares at once are what they are one by one, on ties, tails and few values too. */
    @Test
    void quantiles_at_once_are_those_one_by_one() {
        Random random = new Random(3);
        double[] shares =
                IntStream.rangeClosed(0, 20).mapToDouble(i -> i * 0.05).toArray();
        for (int size : new int[] {1, 2, 7, 1000, 20_000}) {
            double[] values = random.doubles(size)
                    .map(u -> random.nextBoolean() ? Math.rint(10 * u) : Math.pow(u, -2))
                    .toArray();
            double[] all = Quantiles.of(values).at(shares);
            double[] sorted = values.clone();
            java.util.Arrays.sort(sorted);
            for (int i = 0; i < shares.length; i++) {
                double place = (size - 1) * shares[i];
                int below = (int) place;
                double next = sorted[Math.min(below + 1, size - 1)];
                assertEquals(
                        sorted[below] + (next - sorted[below]) * (place - below), all[i], 1e-12 * sorted[size - 1]);
            }
        }
    }

    /** Worked by hand with k = 0.5: 1 → 0.5; 2 → 2; −3 → 0 and 2.5; 0 → 2; 4 → 3.5 and 0. */
    @Test
    void cumulative_sums_are_those_worked_by_hand() {
        Cusum sums = Cusum.of(new double[] {1, 2, -3, 0, 4}, 0.5, 3);
        double[] high = IntStream.range(0, 5).mapToDouble(sums::highAt).toArray();
        double[] low = IntStream.range(0, 5).mapToDouble(sums::lowAt).toArray();
        assertArrayEquals(new double[] {0.5, 2, 0, 0, 3.5}, high);
        assertArrayEquals(new double[] {0, 0, 2.5, 2, 0}, low);
        assertEquals(4, sums.highAlarm());
        assertEquals(-1, sums.lowAlarm());
        assertEquals(4, sums.began(4, false));
        assertEquals(2, sums.began(3, true));
    }

    /**
     * Montgomery, Introduction to Statistical Quality Control, table of two-sided run lengths for k = 1/2; from memory.
     */
    @ParameterizedTest
    @CsvSource({"4, 168", "5, 465"})
    void the_run_length_between_false_alarms_is_the_published_one(double limit, double published) {
        assertEquals(published, Cusum.runLength(0.5, limit), 0.02 * published);
        assertEquals(limit, Cusum.limitFor(0.5, Cusum.runLength(0.5, limit)), 1e-9);
    }

    /** 400 runs: their mean lies within four of its standard errors, which for run lengths is the mean over √400. */
    @Test
    void false_alarms_come_as_often_as_the_run_length_says() {
        Random random = new Random(17);
        double sum = 0;
        int runs = 400;
        for (int i = 0; i < runs; i++) {
            double[] values =
                    random.doubles(8000).map(u -> random.nextGaussian()).toArray();
            Cusum sums = Cusum.of(values, 0.5, 4);
            int low = sums.lowAlarm() < 0 ? 8000 : sums.lowAlarm();
            int high = sums.highAlarm() < 0 ? 8000 : sums.highAlarm();
            sum += Math.min(low, high) + 1;
        }
        double expected = Cusum.runLength(0.5, 4);
        assertEquals(expected, sum / runs, 4 * expected / Math.sqrt(runs));
    }

    /** With one pattern: ln L = b²τ²/(2(1 + gτ²)) − ln(1 + gτ²)/2, size bτ²/(1 + gτ²), error τ/√(1 + gτ²). */
    @Test
    void the_evidence_for_one_pattern_is_its_closed_form() {
        double g = 50;
        double b = 12;
        double t = 0.3;
        Evidence found = Evidence.of(new double[][] {{g}}, new double[] {b}, new Prior(0, t, false));
        double inner = 1 + g * t * t;
        assertEquals(b * b * t * t / (2 * inner) - Math.log(inner) / 2, found.logarithm(), 1e-12);
        assertEquals(b * t * t / inner, found.size(0), 1e-12);
        assertEquals(t / Math.sqrt(inner), found.error(0), 1e-12);
    }

    /** Half of a symmetric prior is above 0, so that a size that surely is gains a factor of two. */
    @Test
    void a_size_that_can_only_be_positive_gains_where_it_is() {
        double[][] g = {{1e4}};
        double free =
                Evidence.of(g, new double[] {1e3}, new Prior(0, 0.3, false)).logarithm();
        assertEquals(
                free + Math.log(2),
                Evidence.of(g, new double[] {1e3}, new Prior(0, 0.3, true)).logarithm(),
                1e-9);
        assertTrue(Evidence.of(g, new double[] {-1e3}, new Prior(0, 0.3, true)).logarithm() < free - 10);
    }

    /** A prior that is sure of its mean m leaves ln L = m·b − m²g/2. */
    @Test
    void a_sure_prior_is_held_to_what_it_says() {
        Evidence found = Evidence.of(new double[][] {{4}}, new double[] {3}, new Prior(0.5, 0, false));
        assertEquals(0.5 * 3 - 0.25 * 4 / 2, found.logarithm(), 1e-6);
        assertEquals(0.5, found.size(0), 1e-6);
        assertFalse(Double.isNaN(found.error(0)));
    }

    /** Tables of Student's t: 2.228 for 10 degrees of freedom and 95 %, 1.960 for very many. */
    @Test
    void the_factor_of_student_is_that_of_the_tables() {
        assertEquals(2.228, Students.factor(0.95, 10), 5e-4);
        assertEquals(1.960, Students.factor(0.95, 1e7), 5e-4);
    }
}

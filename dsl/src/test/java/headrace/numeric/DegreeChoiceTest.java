package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class DegreeChoiceTest {
    private static final int SEEDS = 100;

    /** Families of our own invention: falling heads, droops, rising powers; flows of very different size. */
    @ParameterizedTest(name = "degree {0}: {1} up to {2}")
    @CsvSource({
        "1, 30 -9, 90",
        "1, 18 -11, 0.02",
        "1, 2 3.1, 40",
        "2, 31.2 -1.6 -14.9, 135",
        "2, 20 2 -9, 55",
        "2, 12 0 -6, 0.004",
        "2, 3.1 8.4 -2.2, 135",
        "3, 40 -2 -4 -14, 60",
        "3, 25 4 -3 -10, 0.03",
        "3, 60 -30 40 -45, 240",
        "3, 4 6 3 -4, 60"
    })
    void finds_the_degree_of_a_noisy_curve_in_most_of_a_hundred_tests(int degree, String coefficients, double reach) {
        Polynomial truth = Polynomial.of(Arrays.stream(coefficients.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray());
        for (boolean proportional : new boolean[] {true, false}) {
            for (double unevenness : new double[] {0, 0.6}) {
                int right = 0;
                for (int seed = 0; seed < SEEDS; seed++) {
                    Random random = new Random(20_000 + seed);
                    right += chosen(truth, reach, unevenness, proportional, random) == degree ? 1 : 0;
                }
                String found = right + " of " + SEEDS + " right, noise proportional to the value: " + proportional;
                assertTrue(right >= 85, found);
            }
        }
    }

    private static int chosen(Polynomial truth, double reach, double unevenness, boolean proportional, Random random) {
        int points = 12;
        double[] x = new double[points];
        double[] y = new double[points];
        for (int i = 0; i < points; i++) {
            double place = i == 0 ? 0 : i + unevenness * (random.nextDouble() - 0.5);
            x[i] = reach * place / (points - 1);
            double value = truth.valueAt(x[i] / reach);
            y[i] = value + 0.002 * random.nextGaussian() * (proportional ? value : truth.valueAt(0));
        }
        return degree(x, y);
    }

    @Test
    void passes_through_three_to_five_points_where_a_low_degree_does() {
        assertEquals(1, degree(new double[] {0, 2, 5}, new double[] {10, 8, 5}));
        assertEquals(2, degree(new double[] {0, 2, 5}, new double[] {10, 9, 5}));
        assertEquals(1, degree(new double[] {0, 1, 2, 3, 4}, new double[] {10, 9, 8, 7, 6}));
        assertEquals(2, degree(new double[] {0, 1, 2, 3, 4}, new double[] {10, 9, 6, 1, -6}));
    }

    @Test
    void takes_the_parabola_nearest_four_or_five_points_that_lie_on_none() {
        assertEquals(2, degree(new double[] {0, 1, 2, 3}, new double[] {10, 9.2, 6.1, 1}));
        assertEquals(2, degree(new double[] {0, 1, 2, 3, 4}, new double[] {10, 9.9, 9.2, 7.3, 3.6}));
    }

    @Test
    void draws_a_line_through_few_points_at_two_arguments() {
        assertEquals(1, degree(new double[] {0, 0, 4}, new double[] {10, 10.2, 6}));
    }

    @Test
    void chooses_no_degree_that_the_number_of_points_cannot_judge() {
        double[] wave = {0, 3, -1, 4, -2, 5, 1, -3};
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7};
        for (int points = 6; points <= 8; points++) {
            int highest = degree(Arrays.copyOf(x, points), Arrays.copyOf(wave, points));
            assertTrue(highest <= points - 4, "degree " + highest + " of " + points + " points");
        }
    }

    @Test
    void chooses_no_degree_that_repeated_arguments_cannot_carry() {
        double[] x = {0, 0, 0, 5, 5, 5, 9, 9, 9};
        double[] y = {1, 1.1, 0.9, 7, 7.1, 6.9, 1, 1.1, 0.9};
        assertEquals(2, degree(x, y));
    }

    @Test
    void takes_the_lowest_degree_that_meets_exact_points() {
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7, 8};
        for (int degree = 1; degree <= 4; degree++) {
            Polynomial truth = Polynomial.of(Arrays.copyOf(new double[] {30, -1, -0.5, -0.03, -0.02}, degree + 1));
            assertEquals(degree, degree(x, Arrays.stream(x).map(truth::valueAt).toArray()));
        }
    }

    private static int degree(double[] x, double[] y) {
        double[] ones = new double[x.length];
        Arrays.fill(ones, 1);
        return DegreeChoice.fit(x, y, ones).polynomial().degree();
    }
}

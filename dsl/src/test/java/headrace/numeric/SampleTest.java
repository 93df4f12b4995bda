package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SampleTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    /** Type 7 by hand: places 0.25·4 = 1, 0.5·4 = 2 and 0.9·4 = 3.6 of 1, 2, 4, 8, 16. */
    @Test
    void quantiles_interpolate_between_the_nearest_two() {
        Sample sample = new Sample(new double[] {8, 1, 16, 2, 4});
        assertEquals(2, sample.quantile(0.25));
        assertEquals(4, sample.quantile(0.5));
        assertEquals(8 + 0.6 * 8, sample.quantile(0.9), 1e-12);
        assertEquals(1, sample.quantile(0));
        assertEquals(16, sample.quantile(1));
    }

    @Test
    void quantiles_agree_with_the_ordered_sample_whatever_its_shape() {
        double[] numbers = IntStream.range(0, 20_001)
                .mapToDouble(i -> Math.exp(9 * RandomStreams.of(5).uniform(0, i)))
                .toArray();
        numbers[77] = 1e12;
        double[] ordered = numbers.clone();
        Arrays.sort(ordered);
        Sample sample = new Sample(numbers);
        for (int percent = 0; percent <= 100; percent++) {
            assertEquals(ordered[200 * percent], sample.quantile(percent / 100.0), 1e-9 * ordered[200 * percent]);
        }
    }

    @Test
    void infinite_numbers_count_as_the_greatest_and_the_least() {
        Sample sample = new Sample(new double[] {INFINITE, 3, -INFINITE, 5, INFINITE});
        assertEquals(-INFINITE, sample.quantile(0));
        assertEquals(3, sample.quantile(0.25));
        assertEquals(5, sample.quantile(0.5));
        assertEquals(INFINITE, sample.quantile(0.75));
        assertEquals(2, sample.finite());
        assertEquals(4, sample.meanOfFinite(), 1e-12);
        assertEquals(2, sample.below(5));
        assertEquals(INFINITE, new Sample(new double[] {INFINITE, INFINITE}).quantile(0.3));
    }

    @Test
    void equal_numbers_have_one_quantile_and_no_deviation() {
        Sample sample = new Sample(new double[] {7, 7, 7});
        assertEquals(7, sample.quantile(0.37));
        assertEquals(0, sample.standardDeviation());
        assertEquals(0, new Sample(new double[] {7}).standardDeviation());
    }

    /** 2, 4, 4, 4, 5, 5, 7, 9: mean 5, squares 32, divisor 7. */
    @Test
    void the_deviation_has_the_divisor_of_a_sample() {
        Sample sample = new Sample(new double[] {2, 4, 4, 4, 5, 5, 7, 9});
        assertEquals(5, sample.mean());
        assertEquals(Math.sqrt(32.0 / 7), sample.standardDeviation(), 1e-15);
    }

    /** Tables of the normal distribution: 97.5 % below 1.959964, 84.13447 % below 1. */
    @Test
    void the_normal_distribution_has_its_tabled_values() {
        assertEquals(1.959963985, Normal.quantile(0.975), 1e-9);
        assertEquals(0.8413447461, Normal.below(1), 1e-10);
        assertEquals(0, Normal.quantile(0.5), 1e-15);
        assertEquals(-3, Normal.quantile(Normal.below(-3)), 1e-12);
    }
}

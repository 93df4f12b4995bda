package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RandomStreamsTest {
    private static final int MANY = 200_000;

    @Test
    void a_stream_is_split_mix_64_of_its_starting_number() {
        java.util.SplittableRandom same = new java.util.SplittableRandom(42);
        RandomStreams streams = RandomStreams.startingAt(41);
        for (int i = 0; i < 100; i++) {
            assertEquals((same.nextLong() >>> 11) * 0x1p-53, streams.uniform(1, i));
        }
    }

    @Test
    void a_filled_stretch_holds_the_numbers_of_their_places() {
        RandomStreams streams = RandomStreams.of(7);
        double[] stretch = new double[50];
        streams.fillUniform(3, 1000, stretch, 50);
        for (int i = 0; i < 50; i++) {
            assertEquals(streams.uniform(3, 1000 + i), stretch[i]);
        }
    }

    @Test
    void normal_pairs_are_radius_and_angle_of_box_and_muller() {
        RandomStreams streams = RandomStreams.of(3);
        double[] one = new double[1000];
        double[] two = new double[1000];
        streams.fillNormal(4, 0, one, two, 1000);
        for (int i = 0; i < 1000; i++) {
            double radius = Math.sqrt(-2 * Math.log(1 - streams.uniform(4, i)));
            double angle = 2 * Math.PI * streams.uniform(5, i);
            assertEquals(radius * Math.cos(angle), one[i], 2e-14);
            assertEquals(radius * Math.sin(angle), two[i], 2e-14);
        }
    }

    @Test
    void normal_numbers_have_mean_0_deviation_1_and_five_percent_beyond_1_96() {
        double[] one = new double[MANY];
        double[] two = new double[MANY];
        RandomStreams.of(11).fillNormal(0, 0, one, two, MANY);
        double mean = Arrays.stream(one).average().orElseThrow();
        double squares = Arrays.stream(one).map(z -> z * z).sum() / MANY;
        double beyond = Arrays.stream(two).filter(z -> Math.abs(z) > 1.959964).count() / (double) MANY;
        double together = 0;
        for (int i = 0; i < MANY; i++) {
            together += one[i] * two[i] / MANY;
        }
        double sigma = 1 / Math.sqrt(MANY);
        assertEquals(0, mean, 4 * sigma);
        assertEquals(1, squares, 4 * Math.sqrt(2) * sigma);
        assertEquals(0.05, beyond, 4 * Math.sqrt(0.05 * 0.95) * sigma);
        assertEquals(0, together, 4 * sigma);
    }

    @Test
    void neighbouring_seeds_share_no_stream() {
        assertNotEquals(RandomStreams.of(1).uniform(1, 0), RandomStreams.of(2).uniform(0, 0));
    }

    @Test
    void a_quantile_lies_between_the_two_nearest_ordered_values() {
        Quantiles quantiles = Quantiles.of(new double[] {7, 1, 3, 10});
        double[] found = {quantiles.at(0), quantiles.at(0.5), quantiles.at(0.25), quantiles.at(1)};
        assertArrayEquals(new double[] {1, 5, 2.5, 10}, found, 1e-15); // places 0, 1.5, 0.75 and 3 of 1, 3, 7, 10
    }

    @Test
    void quantiles_of_a_large_sample_are_those_of_the_sorted_one() {
        double[] one = new double[MANY];
        double[] sorted = new double[MANY];
        RandomStreams.of(5).fillNormal(0, 0, one, sorted, MANY);
        System.arraycopy(one, 0, sorted, 0, MANY);
        Arrays.sort(sorted);
        Quantiles quantiles = Quantiles.of(one);
        for (double share : new double[] {0, 0.025, 0.5, 0.975, 0.99999, 1}) {
            double place = (MANY - 1) * share;
            int below = (int) place;
            double above = below == MANY - 1 ? sorted[below] : sorted[below + 1];
            assertEquals(sorted[below] + (above - sorted[below]) * (place - below), quantiles.at(share), 1e-14);
        }
    }

    @Test
    void equal_values_have_themselves_as_every_quantile() {
        assertEquals(4, Quantiles.of(new double[] {4, 4, 4}).at(0.3));
    }

    @Test
    void there_is_no_quantile_of_nothing_or_of_what_is_not_finite() {
        assertThrows(IllegalArgumentException.class, () -> Quantiles.of(new double[0]));
        assertThrows(IllegalArgumentException.class, () -> Quantiles.of(new double[] {1, Double.NaN}));
        assertThrows(
                IllegalArgumentException.class,
                () -> Quantiles.of(new double[] {1, 2}).at(1.1));
    }
}

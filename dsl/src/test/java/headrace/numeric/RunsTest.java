package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RunsTest {
    @Test
    void are_counted_where_the_sign_changes() {
        assertEquals(0, Runs.count(new double[0]));
        assertEquals(1, Runs.count(new double[] {1, 0, 2}));
        assertEquals(4, Runs.count(new double[] {1, -1, -2, 3, -1}));
    }

    /** Every order of the signs, counted one by one. */
    @Test
    void are_as_likely_as_counting_every_order_says() {
        for (int positives = 0; positives <= 6; positives++) {
            for (int negatives = 0; negatives <= 6; negatives++) {
                for (int most = 1; most <= 12; most++) {
                    double expected = counted(positives, negatives, most);
                    assertEquals(expected, Runs.probabilityOfAtMost(most, positives, negatives), 1e-12);
                }
            }
        }
    }

    private static double counted(int positives, int negatives, int most) {
        int n = positives + negatives;
        int all = 0;
        int few = 0;
        for (int order = 0; order < 1 << n; order++) {
            if (Integer.bitCount(order) == negatives) {
                double[] signs = new double[n];
                for (int i = 0; i < n; i++) {
                    signs[i] = (order >> i & 1) == 1 ? -1 : 1;
                }
                all++;
                few += Runs.count(signs) <= most ? 1 : 0;
            }
        }
        return few / (double) all;
    }
}

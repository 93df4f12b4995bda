package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LinearFitTest {
    /** The straight line nearest (0;1), (1;3), (2;4) by hand: 7/6 + 3/2·x, residuals −1/6, 1/3, −1/6. */
    @Test
    void finds_the_nearest_straight_line() {
        LinearFit fit = LinearFit.of(new double[][] {{1, 0}, {1, 1}, {1, 2}}, new double[] {1, 3, 4});
        assertEquals(7 / 6.0, fit.coefficient(0), 1e-14);
        assertEquals(1.5, fit.coefficient(1), 1e-14);
        assertEquals(Math.sqrt((1 / 36.0 + 1 / 9.0 + 1 / 36.0) / 3), fit.residual(), 1e-14);
        assertEquals(2, fit.free());
    }

    /** Falling values cannot be met by a rising term: the mean remains. */
    @Test
    void holds_a_term_at_zero_that_would_fall_below() {
        LinearFit fit = LinearFit.nonNegative(new double[][] {{1, 0}, {1, 1}, {1, 2}}, new double[] {3, 2, 1});
        assertEquals(2, fit.coefficient(0), 1e-14);
        assertEquals(0, fit.coefficient(1));
        assertEquals(1, fit.free());
        LinearFit none = LinearFit.nonNegative(new double[][] {{1}, {2}}, new double[] {-1, -1});
        assertEquals(0, none.coefficient(0));
    }

    @Test
    void counts_the_terms_that_points_tell_apart() {
        assertEquals(2, LinearFit.rank(new double[][] {{1, 0}, {1, 1}, {1, 2}}));
        assertEquals(1, LinearFit.rank(new double[][] {{1, 5}, {2, 10}, {3, 15}}));
        assertEquals(1, LinearFit.rank(new double[][] {{1, 0}, {2, 0}, {3, 0}}));
    }

    /** The conditions of Karush, Kuhn and Tucker: no slope along a free term, none downwards along a held one. */
    @RepeatedTest(50)
    void meets_the_conditions_of_the_least_sum(RepetitionInfo round) {
        Random random = new Random(round.getCurrentRepetition());
        double[][] terms = new double[9][4];
        double[] values = new double[9];
        for (int i = 0; i < 9; i++) {
            values[i] = random.nextDouble() - 0.3;
            for (int j = 0; j < 4; j++) {
                terms[i][j] = random.nextDouble();
            }
        }
        LinearFit fit = LinearFit.nonNegative(terms, values);
        for (int j = 0; j < 4; j++) {
            double slope = 0;
            for (int i = 0; i < 9; i++) {
                double off = -values[i];
                for (int k = 0; k < 4; k++) {
                    off += fit.coefficient(k) * terms[i][k];
                }
                slope += off * terms[i][j];
            }
            assertTrue(fit.coefficient(j) >= 0);
            assertTrue(slope >= -1e-12, "slope " + slope);
            assertEquals(0, fit.coefficient(j) * slope, 1e-12);
        }
    }
}

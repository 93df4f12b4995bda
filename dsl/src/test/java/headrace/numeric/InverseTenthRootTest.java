package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InverseTenthRootTest {
    @Test
    void keeps_its_bound_at_a_million_points_and_both_ends() {
        int points = 1_000_000;
        double worst = 0;
        for (int i = 0; i <= points; i++) {
            double x = InverseTenthRoot.LOW + (InverseTenthRoot.HIGH - InverseTenthRoot.LOW) * i / points;
            worst = Math.max(worst, Math.abs(InverseTenthRoot.inside(x) / Math.pow(x, -0.1) - 1));
        }
        assertEquals(0, worst, 1e-14);
    }

    /** (0.9⁵)^(−0.1) = 0.9^(−1/2). */
    @Test
    void is_one_at_one_and_a_known_root_elsewhere() {
        assertEquals(1, InverseTenthRoot.inside(1), 1e-14);
        assertEquals(1 / Math.sqrt(0.9), InverseTenthRoot.inside(Math.pow(0.9, 5)), 1e-14);
    }
}

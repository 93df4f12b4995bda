package headrace.pump;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.Duty;
import headrace.units.Head;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Flows in m³/h in the formulas, in m³/s in what is tested. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FallingHeadTest {
    private static final double H = 3600;

    /** H = 40 − 0.05·Q + 0.001·Q² − 0.00002·Q³, to 120 m³/h, where it is 40 − 6 + 14.4 − 34.56 = 13.84 m. */
    private static final FallingHead CUBIC = new FallingHead(PumpBranch.of(Parabolas.cubic()));

    private static double cubic(double q) {
        return 40 - 0.05 * q + 0.001 * q * q - 0.00002 * q * q * q;
    }

    /** 30 − 0.1·Q − 0.0008·Q², and 0.5 m for the valve and 2 m at 50 m³/h for the branch. */
    private static FallingHead parabola() {
        return new FallingHead(PumpBranch.of(Parabolas.curve("P-E", 100, 30, -0.1, -0.0008))
                .withCheckValve(Head.metres(0.5))
                .withLoss(new Duty(KnownPump.m3ph(50), Head.metres(2))));
    }

    @Test
    void a_parabola_is_known_as_one_with_valve_and_loss_in_its_terms() {
        FallingHead head = parabola();
        assertTrue(head.parabola());
        assertEquals(29.5, head.shutOffMetres(), 1e-12);
        assertEquals(0.1 * H, head.linear(), 1e-9);
        assertEquals(0.0016 * H * H, head.square(), 1e-6);
        assertEquals(100 / H, head.end(), 1e-15);
    }

    @Test
    void its_slope_is_that_of_the_formula_and_stays_beyond_the_end() {
        assertEquals(-(0.1 + 0.0032 * 40) * H, parabola().slopeAt(40 / H), 1e-8);
        assertEquals(-(0.1 + 0.0032 * 100) * H, parabola().slopeAt(100 / H), 1e-8);
        assertEquals(-(0.1 + 0.0032 * 100) * H, parabola().slopeAt(130 / H), 1e-8);
    }

    @Test
    void a_line_is_a_parabola_without_a_square() {
        FallingHead line = new FallingHead(PumpBranch.of(Parabolas.curve("P-L", 100, 30, -0.2)));
        assertTrue(line.parabola());
        assertEquals(0, line.square(), 1e-4);
        assertTrue(line.square() >= 0);
        assertEquals(0.2 * H, line.linear(), 1e-7);
    }

    /** 40 + 0.05·Q − 0.005·Q² rises first; 40 − 0.5·Q + 0.001·Q² bends upward: neither has the one root sought. */
    @Test
    void what_rises_or_bends_upward_is_no_parabola_here() {
        assertFalse(new FallingHead(PumpBranch.of(Parabolas.curve("P-R", 80, 40, 0.05, -0.005))).parabola());
        assertFalse(new FallingHead(PumpBranch.of(Parabolas.curve("P-U", 80, 40, -0.5, 0.001))).parabola());
    }

    /** A cubic term of no weight in the middle and at the ends: Q·(Q − 50)·(Q − 100) is 0 at all three points. */
    @Test
    void three_points_on_a_parabola_do_not_make_the_curve_one() {
        double a = 1e-6;
        assertFalse(
                new FallingHead(PumpBranch.of(Parabolas.curve("P-S", 100, 40, -0.1 - 5000 * a, -0.001 + 150 * a, -a)))
                        .parabola());
    }

    @Test
    void a_cubic_has_the_slope_of_its_derivative_at_its_ends_too() {
        assertFalse(CUBIC.parabola());
        for (double q : new double[] {0, 30, 60, 119.9999, 120}) {
            double slope = (-0.05 + 0.002 * q - 0.00006 * q * q) * H;
            assertEquals(slope, CUBIC.slopeAt(q / H), 2e-4 * Math.abs(slope), "at " + q);
        }
    }

    @Test
    void a_cubic_gives_back_the_flow_of_each_of_its_heads() {
        for (double q = 1; q < 120; q += 7) {
            assertEquals(q, CUBIC.flowAt(cubic(q)) * H, 1e-11 * 120, "at " + q);
        }
        assertEquals(120, CUBIC.flowAt(cubic(120)) * H, 1e-9);
    }

    @Test
    void ten_steps_are_enough_for_nine_digits_of_a_flow() {
        for (double q = 1; q < 120; q += 7) {
            assertEquals(q, CUBIC.flowAt(cubic(q), 10) * H, 1e-9 * 120, "at " + q);
        }
    }

    /** At 120 m³/h the slope is −0.05 + 0.24 − 0.864 = −0.674 m for each m³/h: 1.348 m lower lies 2 m³/h further. */
    @Test
    void beyond_its_end_the_curve_goes_on_along_its_tangent() {
        assertEquals(122, CUBIC.flowAt(13.84 - 1.348) * H, 1e-4);
    }
}

package headrace.circuit.part.fitting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.PartProblem;
import headrace.problem.Refusal;
import headrace.units.Length;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FittingTest {
    private static double k(FittingLoss loss, Length inside, double reynolds) {
        return loss.constantAt(inside) + loss.overReynolds() / reynolds;
    }

    /** Hooper's form by hand: 800/1e5 + 0.40·(1 + 1/2) = 0.608; 1500/1e4 + 4.0·1.5 = 6.15. */
    @Test
    void two_k_is_that_of_the_published_form() {
        assertEquals(0.608, k(FittingLoss.twoK(800, 0.40), Length.inches(2), 1e5), 1e-12);
        assertEquals(6.15, k(StandardFitting.GLOBE_VALVE.byTwoK().loss(), Length.inches(2), 1e4), 1e-12);
    }

    /** Darby's form by hand at 1 in, where D^0.3 is 1: 800/1e5 + 0.091·(1 + 4) = 0.463. */
    @Test
    void three_k_is_that_of_the_published_form() {
        assertEquals(0.463, k(StandardFitting.WELDED_ELBOW.byThreeK().loss(), Length.inches(1), 1e5), 1e-12);
    }

    @Test
    void a_constant_k_is_the_same_in_every_pipe() {
        assertEquals(0.9, k(FittingLoss.constant(0.9), Length.inches(2), 10), 0);
        assertEquals(0, FittingLoss.constant(0.9).diameters(), 0);
    }

    @Test
    void what_takes_less_than_nothing_is_refused_with_its_name() {
        Refusal refusal = assertThrows(Refusal.class, () -> Fitting.of("odd elbow", FittingLoss.constant(-0.5)));
        assertEquals(PartProblem.IMPOSSIBLE_PART, refusal.problem());
        assertTrue(refusal.getMessage().contains("odd elbow"), refusal.getMessage());
        assertThrows(Refusal.class, () -> Fitting.of("odd elbow", FittingLoss.twoK(800, Double.NaN)));
        assertThrows(
                Refusal.class,
                () -> Fitting.of("odd elbow", FittingLoss.constant(1)).times(-1));
    }

    @Test
    void a_misspelt_fitting_is_answered_with_the_nearest() {
        assertEquals(StandardFitting.WELDED_ELBOW, StandardFitting.named("Welded elbow"));
        Refusal refusal = assertThrows(Refusal.class, () -> StandardFitting.named("weldd elbow"));
        assertTrue(refusal.getMessage().contains("The nearest is welded elbow"), refusal.getMessage());
    }
}

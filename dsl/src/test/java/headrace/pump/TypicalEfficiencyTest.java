package headrace.pump;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Power;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TypicalEfficiencyTest {
    /** Product and Process Design Principles, 2nd edition, example 16.5, as an open library gives it. */
    @Test
    void the_published_example_is_met() {
        assertEquals(
                0.705889, TypicalEfficiency.ofPump(Flow.usGallonsPerMinute(461)).value(), 1e-6);
        assertEquals(0.912892, TypicalEfficiency.ofMotor(Power.horsepower(137)).value(), 1e-6);
    }

    @Test
    void sizes_outside_the_correlation_are_refused() {
        for (double gpm : new double[] {0, 49, 5001}) {
            Refusal refusal = assertThrows(Refusal.class, () -> TypicalEfficiency.ofPump(Flow.usGallonsPerMinute(gpm)));
            assertEquals(PumpProblem.NO_TYPICAL_EFFICIENCY, refusal.problem());
        }
        assertThrows(Refusal.class, () -> TypicalEfficiency.ofMotor(Power.horsepower(0.9)));
        assertThrows(Refusal.class, () -> TypicalEfficiency.ofMotor(Power.horsepower(1501)));
    }
}

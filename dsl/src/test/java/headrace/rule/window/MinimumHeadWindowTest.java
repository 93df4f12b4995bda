package headrace.rule.window;

import static headrace.circuit.KnownLoop.LOOP;
import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Demands;
import headrace.curve.Duty;
import headrace.drive.SeparateLosses;
import headrace.energy.load.LoadPattern;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.rule.PartLoadRule;
import headrace.rule.RuleProblem;
import headrace.units.Head;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * A plant of 8 m at 80 m³/h; near takes 4 m, a main 3 m and far 5 m at 40 m³/h; all with the square of flow. Worked by
 * hand: at a share z of 80 m³/h the law gives 16·(φ + (1 − φ)·z²) m.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MinimumHeadWindowTest {
    private static final Duty DESIGN = new Duty(m3ph(80), Head.metres(16));
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);
    private static final PartLoadRule RULE = PartLoadRule.THIRTY_PERCENT_AT_HALF_FLOW;

    /**
     * Far alone at 40 m³/h: 2 + 3 + 5 = 10 m, so φ = (10/16 − 1/4)/(3/4) = 1/2. Even at half: 2 + 0.75 + 1.25 = 4 m.
     */
    @Test
    void the_smallest_is_that_of_the_pattern_which_needs_most_and_names_the_branch() {
        LeastMinimumHead least = window(SET, pattern("even", 20, 20), pattern("far alone", 0, 40))
                .least();
        assertEquals(0.5, least.minimumHead().value(), 1e-9);
        assertEquals(10, least.needed().metres(), 1e-8);
        assertEquals("far alone", least.decides().name());
        assertEquals("far", least.branch().orElseThrow());
    }

    /** Far alone at 20 m³/h: 0.5 + 0.75 + 1.25 = 2.5 m, so φ = (2.5/16 − 1/16)/(15/16) = 1/10. */
    @Test
    void an_open_window_shows_both_of_its_ends_from_both_sides() {
        MinimumHeadWindow window = window(SET, pattern("far alone", 0, 20));
        assertTrue(window.isOpen(), window.toString());
        assertEquals(0.1, window.least().minimumHead().value(), 1e-9);
        Evidence serving = window.serving().orElseThrow();
        assertTrue(serving.insideSays().startsWith("every branch is served"), serving.insideSays());
        assertTrue(serving.outsideSays().startsWith("'far' is short by"), serving.outsideSays());
        assertEquals(2, window.upper().size());
        for (RuleEnd end : window.upper()) {
            Evidence evidence = end.evidence().orElseThrow();
            assertTrue(evidence.insideSays().startsWith("passes with"), evidence.insideSays());
            assertTrue(evidence.outsideSays().startsWith("fails with"), evidence.outsideSays());
            assertEquals(end.limit().minimumHead().value() - 0.1, end.width().value(), 1e-9);
        }
        assertTrue(window.openers().isEmpty());
    }

    @Test
    void an_empty_window_says_what_would_open_it_with_numbers() {
        MinimumHeadWindow window = window(SET, pattern("far alone", 0, 40));
        assertFalse(window.isOpen());
        double narrowest = window.upper().stream()
                .mapToDouble(end -> end.limit().minimumHead().value())
                .min()
                .orElseThrow();
        Head less = Head.metres(10 - 16 * (narrowest + (1 - narrowest) / 4));
        assertTrue(
                window.openers().get(0).startsWith("Lower what 'far' needs with 'far alone' by " + less),
                window.openers().toString());
    }

    /** Near and far at 40 m³/h with 12 m of design head, where 16 are needed. */
    @Test
    void where_the_design_head_itself_is_too_little_none_serves() {
        MinimumHeadWindow window = MinimumHeadWindow.of(
                SET, new Duty(m3ph(80), Head.metres(12)), LOOP, List.of(pattern("all", 40, 40)), RULE);
        assertEquals(LeastMinimumHead.Outcome.NONE, window.least().outcome());
        assertTrue(window.openers().get(0).contains("raise the design head"));
    }

    /** At 60 % of its speed the pump gives 14.4 − 1 m at 20 m³/h, far more than the 2.5 m that far needs. */
    @Test
    void what_the_pump_gives_at_its_least_speed_needs_no_minimum_head() {
        MinimumHeadWindow window = window(SET.withMinimumSpeed(SPEED.times(0.6)), pattern("far alone", 0, 20));
        assertEquals(LeastMinimumHead.Outcome.ANY, window.least().outcome());
        assertEquals(0, window.least().minimumHead().value());
    }

    @Test
    void without_patterns_there_is_nothing_to_serve() {
        Refusal refusal = assertThrows(Refusal.class, () -> window(SET));
        assertEquals(RuleProblem.NOTHING_TO_JUDGE, refusal.problem());
    }

    private static MinimumHeadWindow window(PumpSet set, LoadPattern... patterns) {
        return MinimumHeadWindow.of(set, DESIGN, LOOP, List.of(patterns), RULE);
    }

    private static LoadPattern pattern(String name, double near, double far) {
        return new LoadPattern(name, new Demands(Map.of("near", m3ph(near), "far", m3ph(far))));
    }
}

package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.control.ControlProblem;
import headrace.control.SteadyState;
import headrace.energy.StrategyComparison;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.units.Head;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Control laws of a user's own in a script; the pump is the one of KnownPump. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LawWordsTest {
    @Test
    void a_block_is_a_law_like_any_other() {
        Object head = run("""
                night = law('night', design: design) { now -> now.flow < 20.m3ph ? 5.m : 5.m + 15.m * (now.flow / design.flow - 25.percent) }
                night.headAt(40.m3ph)
                """);
        assertEquals(8.75, assertInstanceOf(Head.class, head).metres(), 1e-12);
        assertInstanceOf(StrategyComparison.class, run("""
                        compare(set, year, price: 0.18.perKWh, laws: [
                            law('night', design: design) { now -> now.flow < 20.m3ph ? 5.m : 12.m },
                            limited(constantHead(design), greatestPower: 9.kW, leastFlow: 12.m3ph),
                            generalExponent(design, minimumHead: 30.percent, exponent: 1.6)])
                        """));
    }

    @Test
    void a_block_may_use_the_head_of_another_law() {
        Object state = run("""
                base = quadratic(design, minimumHead: 40.percent)
                steadyState(set, law('a metre more') { now -> base.headAt(now.flow) + 1.mHead }, 40.m3ph)
                """);
        assertEquals(
                12, assertInstanceOf(SteadyState.class, state).point().head().metres(), 1e-9);
    }

    @Test
    void a_block_that_forgets_an_answer_is_refused_before_it_is_used() {
        Refusal refusal = assertThrows(Refusal.class, () -> run("""
                        law('night', design: design) { now -> if (now.flow < 20.m3ph) { 5.m } }
                        """));
        assertEquals(ControlProblem.WRONG_ANSWER_OF_LAW, refusal.problem());
    }

    private static Object run(String lines) {
        Binding binding = new Binding(new HashMap<>(Map.of("curve", KnownPump.curve())));
        return new GroovyShell(binding, ScriptLanguage.configuration()).evaluate("""
                set    = pumpSet(curve, motor(7.5.kW, ie: 3, poles: 4), drive(7.5.kW), minimumSpeed: 10.percent)
                design = duty(80.m3ph, 20.m)
                year   = loadProfile('a made-up year', [[50.percent, 4000.h], [100.percent, 1000.h]])
                """ + lines);
    }
}

package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.liquid.Liquid;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The words for liquids and pump curves, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LiquidAndCurveWordsTest {
    @Test
    void make_the_liquids_that_they_name() {
        assertEquals(Liquid.water(Temperature.celsius(12)), run("water(12.degC)"));
        assertEquals(Liquid.water(Temperature.celsius(12)), run("water('12 °C')"));
        assertEquals(
                Liquid.water(Temperature.celsius(12), AbsolutePressure.bars(3)),
                run("water(12.degC, pressure: '3 bar abs')"));
        assertEquals(
                Liquid.ethyleneGlycol(Ratio.percent(30), Temperature.celsius(-5)),
                run("ethyleneGlycol(30.percent, -5.degC)"));
        assertEquals(
                Liquid.propyleneGlycol(Ratio.percent(30), Temperature.celsius(5)),
                run("propyleneGlycol(30.percent, 5.degC)"));
    }

    @Test
    void make_a_liquid_of_ones_own() {
        Liquid brine = (Liquid) run("""
                liquid('brine', 5.degC, density: 1180.kgpm3, viscosity: '2.3 mPa·s', vapourPressure: '0.7 kPa abs',
                    heatCapacity: '3.1 kJ/(kg·K)')
                """);
        assertEquals(1180, brine.density().si());
        assertEquals(3100, brine.heatCapacity().si(), 1e-9);
    }

    @Test
    void refuse_what_is_no_liquid_and_no_test() {
        refusal(ScriptProblem.NUMBER_WITHOUT_UNIT, "water(12)");
        refusal(ScriptProblem.WRONG_VALUE, "fit(12.degC)");
        refusal(ScriptProblem.MISSING_CHOICE, "liquid('brine', 5.degC, density: 1180.kgpm3)");
    }

    private static Object run(String script) {
        return new GroovyShell(new Binding(), ScriptLanguage.configuration()).evaluate(script);
    }

    private static void refusal(Problem problem, String script) {
        assertEquals(problem, assertThrows(Refusal.class, () -> run(script)).problem());
    }
}

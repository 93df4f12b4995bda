package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.curve.CurvePoint;
import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.SpeedCollapse;
import headrace.curve.TrimComparison;
import headrace.liquid.Liquid;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.List;
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

    private static final String PUMP = """
            test  = pumpTest('P-A', speed: 1450.rpm, liquid: water(20.degC), diameter: 250.mm, points: [
                [0.m3ph, 32.m, 3.kW], [20.m3ph, 31.36.m, 4.4.kW], [40.m3ph, 29.44.m, 5.8.kW], [60.m3ph, 26.24.m, 7.2.kW],
                [80.m3ph, 21.76.m, 8.6.kW], [100.m3ph, 16.m, 10.kW], [55.m3ph, 13.58.m, 6.85.kW/2, 1450.rpm]])
            curve = fit(test)
            """;

    /** The points lie on 32 − 0.0016·Q² and 3 kW + 70 W·Q, but for one reading far off. */
    @Test
    void make_a_test_and_a_curve_in_the_script() {
        PumpCurve curve = (PumpCurve) run(PUMP + "fit(test)");
        assertEquals(7, curve.points().size());
        assertEquals("this script", ((PumpTest) run(PUMP + "test")).source());
        assertEquals(1, curve.basis().inputs().size());
        assertEquals(250, curve.impellerDiameter().orElseThrow().toMillimetres(), 1e-9);
        PumpTest slow = (PumpTest) run(PUMP.replace("6.85.kW/2, 1450.rpm", "6.85.kW, 900.rpm") + "test");
        assertEquals(900, slow.points().get(6).speed().toRevolutionsPerMinute(), 1e-9);
    }

    private static final String CLEAN = PUMP.replace(", [55.m3ph, 13.58.m, 6.85.kW/2, 1450.rpm]", "");

    @Test
    void move_a_curve_over_speed_and_liquid_and_ask_it() {
        PumpCurve curve = (PumpCurve) run(CLEAN + "atSpeed(curve, 725.rpm)");
        assertEquals(8, curve.headAt(Flow.ZERO).metres(), 1e-9);
        assertEquals(
                8,
                ((PumpCurve) run(CLEAN + "atSpeed(curve, 50.percent)"))
                        .headAt(Flow.ZERO)
                        .metres(),
                1e-9);
        assertEquals(
                8,
                ((PumpCurve) run(CLEAN + "atSpeed(curve, '50 %')"))
                        .headAt(Flow.ZERO)
                        .metres(),
                1e-9);
        assertEquals(
                29.44,
                ((CurvePoint) run(CLEAN + "pointAt(curve, 40.m3ph)")).head().metres(),
                1e-9);
        assertEquals(1, ((List<?>) run(CLEAN + "pointsAt(curve, 29.44.m)")).size());
        CurvePoint found = (CurvePoint) run(CLEAN + "pointFor(curve, duty(20.m3ph, 7.36.m))");
        assertEquals(725, found.speed().toRevolutionsPerMinute(), 1e-6);
        assertEquals(false, ((CurvePoint) run(CLEAN + "pointAt(extend(curve, 110.m3ph), 105.m3ph)")).tested());
        PumpCurve cold = (PumpCurve) run(CLEAN + "inLiquid(curve, propyleneGlycol(40.percent, 0.degC))");
        assertEquals(1042.350, cold.liquid().density().si(), 1e-3);
        assertEquals(
                run(CLEAN + "curve.bestEfficiencyPoint().flow()"),
                ((CurvePoint) run(CLEAN + "bestEfficiencyPoint(curve)")).flow());
    }

    @Test
    void choose_shapes_tables_and_models() {
        assertEquals(
                32,
                ((PumpCurve) run(CLEAN + "fit(test, shape: 'never rising and concave')"))
                        .headAt(Flow.ZERO)
                        .metres(),
                1e-9);
        assertEquals(
                32, ((PumpCurve) run(CLEAN + "through(test)")).headAt(Flow.ZERO).metres(), 1e-9);
        refusal(ScriptProblem.WRONG_VALUE, CLEAN + "fit(test, shape: 'never risen')");
        refusal(ScriptProblem.UNKNOWN_CHOICE, CLEAN + "fit(test, form: 'concave')");
        assertEquals(
                EfficiencyOverSpeed.affinity(),
                ((PumpCurve) run(CLEAN + "withEfficiencyOverSpeed(curve, 'affinity')")).efficiencyOverSpeed());
        assertEquals(
                EfficiencyOverSpeed.correlation(),
                ((PumpCurve) run(CLEAN + "withEfficiencyOverSpeed(curve, 'correlation')")).efficiencyOverSpeed());
        assertEquals(
                EfficiencyOverSpeed.mechanicalLoss(Power.watts(80), 2),
                ((PumpCurve) run(CLEAN + "withEfficiencyOverSpeed(curve, mechanicalLoss: 80.W, exponent: 2)"))
                        .efficiencyOverSpeed());
        refusal(ScriptProblem.WRONG_VALUE, CLEAN + "withEfficiencyOverSpeed(curve, 'affine')");
        refusal(ScriptProblem.WRONG_VALUE, CLEAN + "withEfficiencyOverSpeed(curve, 3.kW)");
    }

    @Test
    void measure_the_efficiency_over_speed_of_a_test() {
        String twoSpeeds = CLEAN.replace("10.kW]]", "10.kW], [10.m3ph, 7.84.m, 0.6.kW, 725.rpm]]");
        SpeedCollapse speeds = (SpeedCollapse) run(twoSpeeds + "compareSpeeds(test)");
        assertEquals(2, speeds.groups().size());
        assertEquals(4.4 / 4.8, speeds.groups().get(0).efficiencyShare().value(), 1e-9);
        PumpCurve measured = (PumpCurve) run(twoSpeeds + "withEfficiencyOverSpeed(curve, compareSpeeds(test))");
        assertEquals(speeds.measured().name(), measured.efficiencyOverSpeed().name());
    }

    @Test
    void turn_impellers_down() {
        assertEquals(
                0.9216 * 32,
                ((PumpCurve) run(CLEAN + "trim(curve, 240.mm)"))
                        .headAt(Flow.ZERO)
                        .metres(),
                1e-9);
        assertEquals(
                0.884736 * 32,
                ((PumpCurve) run(CLEAN + "trim(curve, 240.mm, rule: 3, loss: 0)"))
                        .headAt(Flow.ZERO)
                        .metres(),
                1e-9);
        assertEquals(
                43_200 / 48_100.0 * 32,
                ((PumpCurve) run(CLEAN + "trim(curve, '240 mm', inlet: 120.mm)"))
                        .headAt(Flow.ZERO)
                        .metres(),
                1e-9);
        refusal(ScriptProblem.WRONG_VALUE, CLEAN + "trim(curve, 240.mm, rule: 'axial')");
        assertEquals(
                3,
                ((TrimComparison) run(CLEAN + "compareTrims(curve, 240.mm)"))
                        .results()
                        .size());
        assertEquals(
                5,
                ((TrimComparison) run(
                                CLEAN + "compareTrims(curve, 240.mm, inlet: 120.mm, tested: [trim(curve, 220.mm)])"))
                        .results()
                        .size());
        PumpCurve between = (PumpCurve) run(CLEAN + "betweenDiameters([trim(curve, 220.mm), curve], 235.mm)");
        assertEquals((0.88 * 0.88 + 1) / 2 * 32, between.headAt(Flow.ZERO).metres(), 1e-9);
        List<?> sized = (List<?>) run(CLEAN + "sizeImpeller(curve, duty(52.m3ph, 20.m), power: 7.5.kW)");
        assertEquals(3, sized.size());
    }

    @Test
    void refuse_a_point_that_is_none() {
        refusal(ScriptProblem.WRONG_VALUE, PUMP.replace("[0.m3ph, 32.m, 3.kW]", "[0.m3ph, 32.m]"));
        refusal(ScriptProblem.NUMBER_WITHOUT_UNIT, PUMP.replace("[0.m3ph, 32.m, 3.kW]", "[0.m3ph, 32, 3.kW]"));
        refusal(ScriptProblem.WRONG_VALUE, "pumpTest('P-A', speed: 1450.rpm, liquid: 'water', points: [])");
    }

    private static Object run(String script) {
        return new GroovyShell(new Binding(), ScriptLanguage.configuration()).evaluate(script);
    }

    private static void refusal(Problem problem, String script) {
        assertEquals(problem, assertThrows(Refusal.class, () -> run(script)).problem());
    }
}

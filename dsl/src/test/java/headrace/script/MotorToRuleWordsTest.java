package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.circuit.SystemCurve;
import headrace.control.ControlLaw;
import headrace.control.ControlProblem;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.drive.Drive;
import headrace.drive.DriveProblem;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.energy.EnergyProblem;
import headrace.energy.LawYear;
import headrace.energy.StrategyComparison;
import headrace.operation.OperatingPoint;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpProblem;
import headrace.pump.PumpSet;
import headrace.rule.LargestMinimumHead;
import headrace.rule.PartLoadRule;
import headrace.rule.RuleProblem;
import headrace.rule.RuleVerdict;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The words from motor to rule, as a script uses them; the pump is the one of KnownPump. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MotorToRuleWordsTest {
    private static final String BEGINNING = """
            set    = pumpSet(curve, motor(7.5.kW, ie: 3, poles: 4), drive(7.5.kW), minimumSpeed: 10.percent)
            design = duty(80.m3ph, 20.m)
            year   = loadProfile('a made-up year', [[50.percent, 4000.h], [100.percent, 1000.h]])
            """;

    @Test
    void compare_control_laws_over_a_year() {
        StrategyComparison comparison = assertInstanceOf(StrategyComparison.class, run("""
                        compare(set, year, price: 0.18.perKWh, laws: [
                            constantSpeed(),
                            fixedSpeed(design),
                            constantHead(design),
                            linear(design, minimumHead: 50.percent),
                            quadratic(design, minimumHead: 40.percent)])
                        """));
        LawYear quadratic = comparison.laws().get(4);
        double expected = 4 * KnownPump.shaftWatts(40, 11) + KnownPump.shaftWatts(80, 20);
        assertEquals(expected, quadratic.shaftEnergy().toKilowattHours(), 1e-9 * expected);
        assertEquals(
                0.18 * quadratic.wireEnergy().toKilowattHours(),
                quadratic.cost().amount(),
                1e-9);
    }

    @Test
    void judge_a_law_and_find_the_largest_minimum_head() {
        RuleVerdict verdict = assertInstanceOf(
                RuleVerdict.class, run("judge(set, quadratic(design, minimumHead: 8.m), partLoadRule)"));
        assertEquals(0.275, verdict.hydraulicShare().value(), 1e-12);
        LargestMinimumHead largest =
                assertInstanceOf(LargestMinimumHead.class, run("largestMinimumHead(set, design, partLoadRule)"));
        assertEquals(2, largest.limits().size());
        LargestMinimumHead one = assertInstanceOf(
                LargestMinimumHead.class, run("largestMinimumHead(set, design, partLoadRule, losses: ['combined'])"));
        assertEquals(largest.limits().get(1).minimumHead(), one.limits().get(0).minimumHead());
        PartLoadRule own = assertInstanceOf(PartLoadRule.class, run("partLoadRule(name: 'ours', power: 25.percent)"));
        assertEquals(0.25, own.powerFraction().value(), 1e-15);
    }

    @Test
    void find_where_the_pump_runs() {
        OperatingPoint point = assertInstanceOf(OperatingPoint.class, run("operatingPoint(set, design)"));
        assertEquals(Math.sqrt(0.9), point.speedRatio().value(), 1e-12);
        assertInstanceOf(SystemCurve.class, run("systemCurve(design, staticHead: 3.m, exponent: 1.9)"));
        List<?> points = assertInstanceOf(List.class, run("operatingPoints(set, 1450.rpm, systemCurve(design))"));
        assertEquals(1, points.size());
        SteadyState state = assertInstanceOf(
                SteadyState.class, run("steadyState(set, quadratic(design, minimumHead: '40 %'), 40.m3ph)"));
        assertEquals(11, state.point().head().metres(), 1e-11);
    }

    @Test
    void take_choices_of_motor_drive_and_speeds() {
        assertEquals(
                0.915,
                ((Motor) run("motor(7.5.kW, efficiency: 91.5.percent, poles: 4, ratedSpeed: 1455.rpm)"))
                        .fullLoadEfficiency()
                        .value());
        assertEquals(
                0.93,
                ((Motor) run("motor(20.hp, premium: 'enclosed', poles: 4)"))
                        .fullLoadEfficiency()
                        .value(),
                1e-12);
        assertEquals(
                0.75 * 581,
                ((Drive) run("drive(7.5.kW, ie: 2)")).referenceLoss().watts(),
                1e-9);
        assertEquals(
                300, ((Drive) run("drive(7.5.kW, loss: 300.W)")).referenceLoss().watts(), 1e-9);
        PumpSet set = (PumpSet) run("pumpSet(curve, motor(7.5.kW, ie: 3, poles: 4), drive(7.5.kW), minimumSpeed:"
                + " 500.rpm, maximumSpeed: '105 %', losses: 'combined')");
        assertEquals(500, set.minimumSpeed().toRevolutionsPerMinute(), 1e-9);
        assertEquals(1522.5, set.maximumSpeed().toRevolutionsPerMinute(), 1e-9);
        assertEquals("combined", set.driveTrain().model().name());
        PumpSet fast =
                (PumpSet) run("pumpSet(curve, motor(7.5.kW, ie: 3, poles: 4), drive(7.5.kW), maximumSpeed: 1500.rpm)");
        assertTrue(fast.notes().has(PumpProblem.MINIMUM_SPEED_ASSUMED));
        assertFalse(((PumpSet) run("pumpSet(curve, motor(7.5.kW, ie: 3, poles: 4))")).hasDrive());
        assertEquals(
                "combined",
                ((PumpSet) run("withLosses(set, 'combined')"))
                        .driveTrain()
                        .model()
                        .name());
        assertEquals(
                "constant speed through the drive", ((ControlLaw) run("constantSpeed(throughDrive: true)")).name());
    }

    @Test
    void answer_a_mistake_like_a_colleague() {
        refused(ScriptProblem.MISSING_CHOICE, "motor(7.5.kW, ie: 3)");
        refused(ScriptProblem.MISSING_CHOICE, "motor(7.5.kW)");
        refused(ScriptProblem.NUMBER_WITHOUT_UNIT, "motor(7.5, ie: 3, poles: 4)");
        refused(ScriptProblem.WRONG_VALUE, "motor(7.5.kW, ie: 3, poles: 4.5)");
        refused(ScriptProblem.WRONG_VALUE, "motor(7.5.kW, premium: 'closed', poles: 4)");
        refused(ScriptProblem.UNKNOWN_CHOICE, "motor(7.5.kW, IE: 3, poles: 4)");
        refused(DriveProblem.RATING_OUTSIDE_TABLE, "drive(7.5.kW, ie: 3)");
        refused(ScriptProblem.WRONG_VALUE, "pumpSet(motor(7.5.kW, ie: 3, poles: 4), curve, drive(7.5.kW))");
        refused(ScriptProblem.PRESSURE_FOR_HEAD, "duty(80.m3ph, 200.kPa)");
        refused(ScriptProblem.MISSING_CHOICE, "quadratic(design)");
        refused(ControlProblem.IMPOSSIBLE_LAW, "quadratic(design, minimumHead: 21.m)");
        refused(ScriptProblem.NUMBER_WITHOUT_UNIT, "linear(design, minimumHead: 0.5)");
        refused(ScriptProblem.MISSING_CHOICE, "compare(set, year, laws: [fixedSpeed(design)])");
        refused(ScriptProblem.WRONG_VALUE, "compare(set, year, price: 0.18.perKWh, laws: [design])");
        refused(EnergyProblem.DESIGN_MISSING, "compare(set, year, price: 0.18.perKWh, laws: [constantSpeed()])");
        refused(ScriptProblem.WRONG_VALUE, "loadProfile('a', [[50.percent]])");
        refused(ScriptProblem.WRONG_VALUE, "loadProfile('a', [[1000.h, 50.percent]])");
        refused(
                RuleProblem.CONSTANT_EFFICIENCY_REFUSED,
                "largestMinimumHead(withLosses(set, 'constant efficiency'), design, partLoadRule)");
        Refusal refusal = refused(DriveProblem.UNKNOWN_LOSS_MODEL, "withLosses(set, 'seperate')");
        assertTrue(refusal.getMessage().contains("The nearest is 'separate'"));
    }

    @Test
    void say_the_same_in_java() {
        Duty design = ControlWords.duty("80 m³/h", "20 m");
        PumpSet set = DriveWords.pumpSet(
                Map.of("minimumSpeed", "10 %"),
                KnownPump.curve(),
                DriveWords.motor(Map.of("ie", 3, "poles", 4), "7.5 kW"),
                DriveWords.drive("7.5 kW"));
        RuleVerdict java = RuleWords.judge(
                set, ControlWords.quadratic(Map.of("minimumHead", "40 %"), design), RuleWords.partLoadRule());
        RuleVerdict script = (RuleVerdict) run("judge(set, quadratic(design, minimumHead: 40.percent), partLoadRule)");
        assertEquals(script.share(), java.share());
    }

    /** Every word explains itself with an example; those that stand on variables of this script run as they are. */
    @ParameterizedTest
    @ValueSource(strings = {"Motor and drive", "Circuit and control", "Energy codes", "Energy over a year"})
    void run_as_their_help_shows(String subject) {
        List<Vocabulary.Entry> words = Vocabulary.all().words(subject);
        assertFalse(words.isEmpty());
        String variables = """
                comparison = compare(set, year, price: 0.18.perKWh, laws: [fixedSpeed(design)])
                set = pumpSet(curve, motor(7.5.kW, ie: 3, poles: 4), drive(7.5.kW), minimumSpeed: 10.percent)
                loop = directReturn(water(20.degC), resistance(80.m3ph, 60.kPa), [
                    branch('foyer', coil(40.m3ph, 25.kPa), controlValve(63.kv)),
                    branch('attic', coil(40.m3ph, 25.kPa), controlValve(63.kv), main: pipe(40.m, steel: 100))])
                """;
        for (Vocabulary.Entry word : words) {
            run(variables + word.example());
        }
    }

    @Test
    void take_loss_models_by_name_or_as_they_are() {
        assertEquals(LossModel.named("combined"), DriveWords.lossModel("combined", "a test"));
        assertEquals(LossModel.named("combined"), DriveWords.lossModel(LossModel.named("combined"), "a test"));
    }

    private static Object run(String script) {
        Binding binding = new Binding();
        binding.setVariable("curve", KnownPump.curve());
        return new GroovyShell(binding, ScriptLanguage.configuration()).evaluate(BEGINNING + script);
    }

    private static Refusal refused(Problem problem, String script) {
        Refusal refusal = assertThrows(Refusal.class, () -> run(script), script);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal;
    }
}

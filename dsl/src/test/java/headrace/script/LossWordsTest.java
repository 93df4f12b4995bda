package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.drive.DriveProblem;
import headrace.drive.FittedLosses;
import headrace.energy.StrategyComparison;
import headrace.operation.OperatingPoint;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.report.Reports;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LossWordsTest {
    private static final String BEGINNING = """
            points = [[90.percent, 100.percent, 550.W], [50.percent, 100.percent, 420.W], [25.percent, 100.percent, 360.W],
                [90.percent, 50.percent, 260.W], [50.percent, 50.percent, 138.W], [50.percent, 25.percent, 75.W],
                ['25 %', '25 %', '40 W']]
            declared = [[0.percent, 25.percent, 75.W], [0.percent, 50.percent, 100.W], [0.percent, 100.percent, 180.W],
                [50.percent, 25.percent, 84.W], [50.percent, 50.percent, 112.W], [50.percent, 100.percent, 200.W],
                [90.percent, 50.percent, 122.W], [90.percent, 100.percent, 216.W]]
            motor55 = motor(7.5.kW, ie: 3, poles: 4)
            set = pumpSet(curve, motor55, drive(7.5.kW, points: declared, standby: 20.W), minimumSpeed: 10.percent)
            design = duty(80.m3ph, 20.m)
            """;

    @Test
    void fit_losses_to_points() {
        FittedLosses model = (FittedLosses) run("lossModel(points: points, ironExponent: 1.6, frictionExponent: 3)");
        assertEquals(7, model.points().size());
        String text = Reports.of(model).orElseThrow().toText();
        assertTrue(text.contains("s^1.6") && text.contains("Losses as given and by the formula"), text);
        OperatingPoint point =
                (OperatingPoint) run("operatingPoint(withLosses(set, lossModel(points: points)), design)");
        assertTrue(point.basis().choices().stream().anyMatch(choice -> choice.contains("loss model 'fitted'")));
    }

    @Test
    void show_a_drive_with_its_declared_losses_and_its_class() {
        String text = Reports.of(run("drive(7.5.kW, points: declared, standby: 20.W, magnetisingCurrent: 35.percent)"))
                .orElseThrow()
                .toText();
        assertTrue(text.contains("IE2"), text);
        assertTrue(text.contains("0.02 kW") && text.contains("35 %") && text.contains("torque current"), text);
    }

    /** 1000 h at no flow: 20 W are 20 kWh for a law through the drive, nothing on the mains. */
    @Test
    void count_standby_in_the_hours_without_flow() {
        StrategyComparison comparison = (StrategyComparison) run("""
                compare(set, loadProfile('a', [[0.percent, 1000.h], [50.percent, 2000.h], [100.percent, 500.h]]), price: 0.2.perKWh, laws: [
                    fixedSpeed(design), constantSpeed()])
                """);
        assertEquals(20, comparison.laws().get(0).bins().get(0).wireEnergy().toKilowattHours(), 1e-9);
        assertTrue(comparison.laws().get(0).notes().toString().contains("0.02 kW of standby power"));
        assertEquals(0, comparison.laws().get(1).bins().get(0).wireEnergy().si());
    }

    /** n = 1500·(1 − 1/30·T/T_N) with T = P/n, P by hand from the pump; solved by repetition. */
    @Test
    void find_the_speed_on_the_mains_by_slip() {
        OperatingPoint point = (OperatingPoint) run("onMains(pumpSet(curve, motor55), 80.m3ph, slip: true)");
        double speed = 1450;
        for (int i = 0; i < 100; i++) {
            double s = speed / 1450;
            double watts = KnownPump.shaftWatts(80, 40 * s * s - 16);
            speed = 1500 * (1 - watts / s / 7500 / 30);
        }
        assertEquals(speed, point.speed().toRevolutionsPerMinute(), 1e-8);
        assertTrue(speed > 1450 && speed < 1500);
        assertFalse(point.notes().has(DriveProblem.PART_LOAD_OUTSIDE_MODEL));
        OperatingPoint plain = (OperatingPoint) run("onMains(set, 80.m3ph)");
        assertEquals(1450, plain.speed().toRevolutionsPerMinute(), 1e-9);
    }

    @Test
    void count_cables_and_the_place_of_a_motor() {
        OperatingPoint with = (OperatingPoint) run("operatingPoint(pumpSet(curve, motor55, drive(7.5.kW), minimumSpeed:"
                + " 10.percent, cableLoss: 2.percent), design)");
        OperatingPoint without = (OperatingPoint)
                run("operatingPoint(pumpSet(curve, motor55, drive(7.5.kW), minimumSpeed: 10.percent), design)");
        assertEquals(1.02, with.wirePower().over(without.wirePower()).value(), 1e-12);
        String text = Reports.of(run("motor(7.5.kW, ie: 3, poles: 4, altitude: 2000.m, ambient: 45.degC)"))
                .orElseThrow()
                .toText();
        assertTrue(text.contains("6.413 kW") && text.contains("motor-derated"), text);
    }

    @Test
    void run_as_their_help_shows() {
        for (Vocabulary.Entry word : Vocabulary.all().words("Losses")) {
            run(word.example());
        }
        assertEquals(
                "60 %",
                run("torqueBySlip(motor(25.hp, premium: 'enclosed', poles: 4, ratedSpeed: 1750.rpm), 1770.rpm)")
                        .toString());
    }

    @Test
    void answer_a_mistake_like_a_colleague() {
        refused(ScriptProblem.MISSING_CHOICE, "lossModel(ironExponent: 1.5)");
        refused(ScriptProblem.WRONG_VALUE, "lossModel(points: [[1, 2]])");
        refused(ScriptProblem.NUMBER_WITHOUT_UNIT, "lossModel(points: [[1, 2, 3]])");
        refused(DriveProblem.TOO_FEW_LOSS_POINTS, "drive(7.5.kW, points: declared.take(3))");
        refused(DriveProblem.UNKNOWN_LOSS_MODEL, "lossModel('fited')");
        refused(
                DriveProblem.SLIP_BEYOND_MOTOR,
                "onMains(pumpSet(curve, motor(0.55.kW, ie: 3, poles: 4)), 80.m3ph, slip: true)");
    }

    private static Object run(String script) {
        Binding binding = new Binding();
        binding.setVariable("curve", KnownPump.curve());
        return new GroovyShell(binding, ScriptLanguage.configuration()).evaluate(BEGINNING + script);
    }

    private static void refused(Problem problem, String script) {
        Refusal refusal = assertThrows(Refusal.class, () -> run(script), script);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
    }
}

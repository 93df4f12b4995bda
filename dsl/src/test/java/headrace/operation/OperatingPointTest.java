package headrace.operation;

import static headrace.pump.KnownPump.DESIGN;
import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.SystemCurve;
import headrace.curve.CurveFormula;
import headrace.curve.CurveProblem;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.drive.Drive;
import headrace.drive.DriveProblem;
import headrace.drive.DriveTrain;
import headrace.drive.Losses;
import headrace.drive.Motor;
import headrace.drive.SeparateLosses;
import headrace.numeric.Polynomial;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpProblem;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Speed;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class OperatingPointTest {
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);

    /** 40 − 0.0025·Q² against 10 + 0.0015·Q²: Q = √7500, H = 21.25 m (closed form). */
    @Test
    void lies_where_the_pump_meets_a_system_with_static_head() {
        SystemCurve system = SystemCurve.through(new Duty(m3ph(100), Head.metres(25)), Head.metres(10), 2);
        List<OperatingPoint> points = Crossing.of(SET, SPEED, system);
        assertEquals(1, points.size());
        assertEquals(Math.sqrt(7500), points.get(0).flow().toCubicMetresPerHour(), 1e-10 * 86);
        assertEquals(21.25, points.get(0).head().metres(), 1e-10 * 21);
    }

    /** 40 − 0.0025·Q² against 0.004·Q²: Q = √(40/0.0065) = 78.44645 (closed form). */
    @Test
    void lies_where_the_pump_meets_friction_alone() {
        SystemCurve system = SystemCurve.through(new Duty(m3ph(100), Head.metres(40)));
        OperatingPoint point = Crossing.of(SET, SPEED, system).get(0);
        assertEquals(78.44645, point.flow().toCubicMetresPerHour(), 5e-6);
        assertEquals(Math.sqrt(40 / 0.0065), point.flow().toCubicMetresPerHour(), 1e-10 * 78);
    }

    /** 60 m³/h at 15.4 m: s = √((15.4 + 9)/40) = 0.781025, not 60/86.6. */
    @Test
    void needs_the_speed_that_the_curve_gives_and_not_that_of_the_flow() {
        OperatingPoint point = OperatingPoint.at(SET, new Duty(m3ph(60), Head.metres(15.4)));
        assertEquals(0.781025, point.speedRatio().value(), 5e-7);
        assertEquals(15.4, point.head().metres(), 1e-12 * 15);
        assertEquals(KnownPump.shaftWatts(60, 15.4), point.shaftPower().watts(), 1e-9);
    }

    @Test
    void closes_from_the_wire_to_the_water() {
        for (int percent = 30; percent <= 100; percent += 5) {
            OperatingPoint point = OperatingPoint.atSpeed(SET, m3ph(percent * 0.6), SPEED.times(percent / 100.0));
            double pumpLoss =
                    point.shaftPower().watts() - point.hydraulicPower().watts();
            double sum = point.hydraulicPower().watts() + pumpLoss;
            for (Losses.Part part : point.losses().parts()) {
                sum += part.power().watts();
            }
            assertEquals(sum, point.wirePower().watts(), 1e-12 * sum);
            assertEquals(
                    point.wireToWater().value(),
                    point.pumpEfficiency().value() * point.shaftPower().watts() / sum,
                    1e-12);
            assertTrue(point.wireToWater().value() < point.pumpEfficiency().value());
        }
    }

    @Test
    void has_no_drive_losses_on_the_mains() {
        OperatingPoint point = OperatingPoint.onMains(SET, m3ph(40));
        assertEquals(SPEED, point.speed());
        assertEquals(36, point.head().metres(), 1e-12 * 36);
        assertEquals(0, point.losses().of(Losses.Place.DRIVE).watts());
        assertTrue(point.wirePower()
                        .compareTo(OperatingPoint.atSpeed(SET, m3ph(40), SPEED).wirePower())
                < 0);
    }

    /** H = 20 + 0.2·Q − 0.004·Q² against 21 + 0.001·Q²: Q = 20 ± √200. */
    @Test
    void exists_twice_where_a_drooping_pump_meets_a_flat_system() {
        List<OperatingPoint> points = Crossing.of(drooping(), SPEED, flatSystem(21));
        assertEquals(2, points.size());
        assertEquals(20 - Math.sqrt(200), points.get(0).flow().toCubicMetresPerHour(), 1e-9);
        assertEquals(20 + Math.sqrt(200), points.get(1).flow().toCubicMetresPerHour(), 1e-9);
    }

    /** The same with a static head of 21.999998 m: Q = 20 ± 0.02, closer than any grid. */
    @Test
    void exists_twice_even_where_the_two_points_lie_close_together() {
        List<OperatingPoint> points = Crossing.of(drooping(), SPEED, flatSystem(21.999998));
        assertEquals(2, points.size());
        assertEquals(19.98, points.get(0).flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(20.02, points.get(1).flow().toCubicMetresPerHour(), 1e-6);
    }

    @Test
    void is_refused_where_pump_and_system_do_not_meet() {
        refused(OperationProblem.NO_OPERATING_POINT, () -> Crossing.of(drooping(), SPEED, flatSystem(22.1)));
    }

    @Test
    void is_refused_at_a_duty_outside_the_range_of_speeds() {
        refused(
                OperationProblem.DUTY_OUTSIDE_SPEED_RANGE,
                () -> OperatingPoint.at(SET, new Duty(m3ph(80), Head.metres(24.1))));
        PumpSet brisk = SET.withMinimumSpeed(SPEED.times(0.9));
        refused(
                OperationProblem.DUTY_OUTSIDE_SPEED_RANGE,
                () -> OperatingPoint.at(brisk, new Duty(m3ph(60), Head.metres(15.4))));
    }

    @Test
    void is_refused_beyond_the_tested_range_and_marked_where_the_curve_was_extended() {
        refused(CurveProblem.FLOW_OUT_OF_RANGE, () -> OperatingPoint.atSpeed(SET, m3ph(4), SPEED));
        PumpSet extended = SET.with(SET.curve().extendedTo(m3ph(1)));
        OperatingPoint point = OperatingPoint.atSpeed(extended, m3ph(4), SPEED);
        assertTrue(point.notes().has(CurveProblem.EXTENDED_BEYOND_TEST));
        assertTrue(point.notes().has(CurveProblem.CURVE_EXTENDED));
    }

    @Test
    void is_refused_at_another_speed_without_a_drive() {
        refused(PumpProblem.DRIVE_MISSING, () -> OperatingPoint.atSpeed(SET.onMains(), m3ph(40), SPEED.times(0.9)));
        refused(PumpProblem.DRIVE_MISSING, () -> OperatingPoint.at(SET.onMains(), DESIGN));
    }

    /** By hand: at full speed and 73 m³/h the pump takes about 6.6 kW. */
    @Test
    void says_when_its_motor_is_overloaded_there() {
        Power small = Power.kilowatts(5.5);
        PumpSet weak = PumpSet.of(
                SET.curve(), DriveTrain.of(Motor.ofClass(small, 3, 4), Drive.reference(small), SeparateLosses.ASSUMED));
        assertTrue(OperatingPoint.atSpeed(weak, m3ph(73), SPEED).notes().has(DriveProblem.MOTOR_OVERLOAD));
        assertFalse(OperatingPoint.atSpeed(weak, m3ph(20), SPEED).notes().has(DriveProblem.MOTOR_OVERLOAD));
        assertFalse(OperatingPoint.atSpeed(SET, m3ph(73), SPEED).notes().has(DriveProblem.MOTOR_OVERLOAD));
    }

    @Test
    void counts_its_speed_against_the_rated_speed_of_the_motor() {
        Power rated = Power.kilowatts(7.5);
        Motor motor = Motor.ofClass(rated, 3, 4).atRatedSpeed(Speed.revolutionsPerMinute(1480));
        PumpSet set = PumpSet.of(SET.curve(), DriveTrain.of(motor, Drive.reference(rated), SeparateLosses.ASSUMED));
        OperatingPoint point = OperatingPoint.atSpeed(set, m3ph(40), Speed.revolutionsPerMinute(1110));
        assertEquals(0.75, point.speedRatio().value(), 1e-12);
    }

    private static PumpSet drooping() {
        double perHour = 3600;
        Polynomial head = Polynomial.of(20, 0.2 * perHour, -0.004 * perHour * perHour);
        Polynomial power = Polynomial.of(1500, 40 * perHour);
        PumpCurve curve =
                PumpCurve.of("P-B", SPEED, KnownPump.WATER, new CurveFormula(head, power, Flow.ZERO, m3ph(60)));
        return SET.with(curve);
    }

    private static SystemCurve flatSystem(double staticHead) {
        Duty at = new Duty(m3ph(100), Head.metres(staticHead + 10));
        return SystemCurve.through(at, Head.metres(staticHead), 2);
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }

    @Test
    void carries_the_notes_of_the_set() {
        PumpSet assumed = PumpSet.of(SET.curve(), SET.driveTrain());
        OperatingPoint point = OperatingPoint.atSpeed(assumed, m3ph(40), Speed.revolutionsPerMinute(1200));
        assertTrue(point.notes().has(PumpProblem.MINIMUM_SPEED_ASSUMED));
        assertTrue(point.basis().choices().stream().anyMatch(choice -> choice.startsWith("loss model 'separate'")));
    }
}

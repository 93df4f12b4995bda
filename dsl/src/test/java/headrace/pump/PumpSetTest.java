package headrace.pump;

import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.drive.CombinedLosses;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.Motor;
import headrace.drive.SeparateLosses;
import headrace.liquid.Liquid;
import headrace.problem.Note;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Speed;
import headrace.units.Temperature;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PumpSetTest {
    @Test
    void assumes_a_quarter_of_rated_speed_as_its_least_and_says_so() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4));
        assertEquals(362.5, set.minimumSpeed().toRevolutionsPerMinute(), 1e-9);
        assertEquals(1450, set.maximumSpeed().toRevolutionsPerMinute(), 1e-9);
        assertTrue(set.notes().has(PumpProblem.MINIMUM_SPEED_ASSUMED));
        assertFalse(set.withMinimumSpeed(SPEED.times(0.2)).notes().has(PumpProblem.MINIMUM_SPEED_ASSUMED));
    }

    @Test
    void knows_one_speed_only_without_a_drive() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4)).onMains();
        assertEquals(set.maximumSpeed(), set.minimumSpeed());
        assertFalse(set.notes().has(PumpProblem.MINIMUM_SPEED_ASSUMED));
        refused(PumpProblem.DRIVE_MISSING, () -> set.withMinimumSpeed(SPEED.times(0.5)));
    }

    @Test
    void is_refused_with_a_range_of_speeds_that_cannot_be() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4));
        refused(PumpProblem.IMPOSSIBLE_SPEED_RANGE, () -> set.withMinimumSpeed(Speed.ZERO));
        refused(PumpProblem.IMPOSSIBLE_SPEED_RANGE, () -> set.withMinimumSpeed(SPEED.times(1.01)));
        refused(PumpProblem.IMPOSSIBLE_SPEED_RANGE, () -> set.withSpeeds(SPEED, SPEED.times(0.9)));
    }

    @Test
    void is_refused_with_a_motor_that_does_not_turn_at_its_speed() {
        refused(PumpProblem.MOTOR_SPEED_MISMATCH, () -> PumpSet.of(KnownPump.curve(), train(7.5, 2)));
        refused(PumpProblem.MOTOR_SPEED_MISMATCH, () -> PumpSet.of(KnownPump.curve(), train(7.5, 6)));
        DriveTrain slow = DriveTrain.of(
                Motor.ofClass(Power.kilowatts(7.5), 3, 4).atRatedSpeed(Speed.revolutionsPerMinute(1270)),
                Drive.reference(Power.kilowatts(7.5)),
                SeparateLosses.ASSUMED);
        refused(PumpProblem.MOTOR_SPEED_MISMATCH, () -> PumpSet.of(KnownPump.curve(), slow));
        DriveTrain stated = DriveTrain.of(
                Motor.ofClass(Power.kilowatts(7.5), 3, 6).atRatedSpeed(Speed.revolutionsPerMinute(965)),
                Drive.reference(Power.kilowatts(7.5)),
                SeparateLosses.ASSUMED);
        assertEquals(965, PumpSet.of(KnownPump.curve(), stated).ratedSpeed().toRevolutionsPerMinute(), 1e-9);
    }

    /** By hand: Q·H is greatest where 40 = 3·0.0025·Q², at 73.03 m³/h and 26.67 m. */
    @Test
    void says_where_on_its_curve_the_motor_is_too_small() {
        double most = KnownPump.shaftWatts(Math.sqrt(40 / 0.0075), 40 * 2 / 3.0);
        PumpSet enough = PumpSet.of(KnownPump.curve(), train(7.5, 4));
        assertFalse(enough.notes().has(PumpProblem.OVERLOAD_WITHIN_CURVE));
        Note note = PumpSet.of(KnownPump.curve(), train(5.5, 4)).notes().list().stream()
                .filter(each -> each.problem() == PumpProblem.OVERLOAD_WITHIN_CURVE)
                .findFirst()
                .orElseThrow();
        assertTrue(note.text().contains("takes up to " + Power.watts(Math.rint(most)) + ","), note.text());
        assertTrue(note.text().endsWith("rated for 5.5 kW"), note.text());
    }

    @Test
    void takes_wire_power_at_the_share_of_the_motors_own_speed() {
        DriveTrain slow = DriveTrain.of(
                Motor.ofClass(Power.kilowatts(7.5), 3, 4).atRatedSpeed(Speed.revolutionsPerMinute(1480)),
                Drive.reference(Power.kilowatts(7.5)),
                SeparateLosses.ASSUMED);
        double q = m3ph(60).si();
        double shaft = KnownPump.curve().shaftWatts(q, 0.9);
        assertEquals(
                slow.inputWatts(shaft, 0.9 * 1450 / 1480),
                PumpSet.of(KnownPump.curve(), slow).wireWatts(q, 0.9),
                1e-9);
    }

    /**
     * By hand: slip 1450 of 1500 is 1/30 at 7.5 kW and 1450 rpm; at the speed n the pump takes P = ρ·g·Q·H/0.8 with H =
     * 40·(n/1450)² − 0.0025·Q², so n must be 1500·(1 − T/(30·T_N)).
     */
    @Test
    void on_the_mains_slips_with_its_torque() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4));
        double n = set.speedOnMains(m3ph(60)).toRevolutionsPerMinute();
        double shaft = KnownPump.shaftWatts(60, 40 * n * n / (1450 * 1450) - 9);
        double torque = shaft / n / (7500 / 1450.0);
        assertEquals(1500 * (1 - torque / 30), n, 1e-8);
        assertTrue(n > 1450 && n < 1500);
    }

    @Test
    void keeps_its_least_speed_as_stated_when_the_greatest_changes() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4));
        assertFalse(set.minimumSpeedStated());
        PumpSet slower = set.withMaximumSpeed(SPEED.times(0.9));
        assertEquals(1305, slower.maximumSpeed().toRevolutionsPerMinute(), 1e-9);
        assertFalse(slower.minimumSpeedStated());
        assertTrue(set.withMinimumSpeed(SPEED.times(0.3))
                .withMaximumSpeed(SPEED.times(0.9))
                .minimumSpeedStated());
        refused(PumpProblem.IMPOSSIBLE_SPEED_RANGE, () -> set.withMaximumSpeed(SPEED.times(0.2)));
        assertEquals(SPEED, set.withSpeeds(SPEED, SPEED).minimumSpeed());
    }

    @Test
    void says_what_its_speeds_and_its_motor_rest_on() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4));
        assertTrue(set.basis().toString().contains("speed from 362.5 rpm (assumed) to 1450 rpm"));
        assertTrue(set.basis().toString().contains("rated speed of the motor: 1450 rpm, the speed of the pump curve"));
        assertTrue(set.withMinimumSpeed(SPEED.times(0.2)).basis().toString().contains("290 rpm (stated)"));
        assertTrue(set.onMains().basis().toString().contains("speed on the mains 1450 rpm at every load"));
        assertTrue(set.toString().startsWith("P-A with ") && set.toString().endsWith("362.5 rpm to 1450 rpm"));
    }

    /** The power goes with the density; the head, the motor and the speeds stay. */
    @Test
    void stands_in_the_liquid_of_its_circuit() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4)).withMinimumSpeed(SPEED.times(0.2));
        Liquid hot = Liquid.water(Temperature.celsius(80));
        PumpSet there = set.inLiquid(hot);
        assertEquals(hot, there.liquid());
        double ratio = hot.density().over(set.liquid().density()).value();
        double q = m3ph(60).si();
        assertEquals(ratio * set.curve().shaftWatts(q, 1), there.curve().shaftWatts(q, 1), 1e-9);
        assertEquals(set.curve().headMetres(q, 1), there.curve().headMetres(q, 1), 1e-12);
        assertEquals(set.minimumSpeed(), there.minimumSpeed());
        assertSame(set, set.inLiquid(set.liquid()));
    }

    @Test
    void takes_another_loss_model_and_leaves_the_rest() {
        PumpSet set = PumpSet.of(KnownPump.curve(), train(7.5, 4));
        PumpSet other = set.with(new CombinedLosses());
        assertEquals(set.minimumSpeed(), other.minimumSpeed());
        assertFalse(set.wireWatts(m3ph(60).si(), 0.8) == other.wireWatts(m3ph(60).si(), 0.8));
    }

    @Test
    void a_refused_motor_is_told_the_speeds_of_its_poles() {
        String said = assertThrows(Refusal.class, () -> PumpSet.of(KnownPump.curve(), train(7.5, 2)))
                .getMessage();
        assertTrue(said.contains("a motor of 2 poles at 1450 rpm, the speed of the curve of P-A"), said);
        assertTrue(said.contains("turns at 2550 rpm to 3000 rpm on 50 Hz"), said);
    }

    /**
     * The pump takes its most, 7.48 kW at this density, between the ends of its curve; a motor of that size is enough.
     */
    @Test
    void a_motor_of_just_the_greatest_power_is_large_enough() {
        double most = KnownPump.shaftWatts(Math.sqrt(40 / 0.0075), 40 * 2 / 3.0) / 1000;
        assertFalse(
                PumpSet.of(KnownPump.curve(), train(most * 1.0001, 4)).notes().has(PumpProblem.OVERLOAD_WITHIN_CURVE));
        assertTrue(
                PumpSet.of(KnownPump.curve(), train(most * 0.999, 4)).notes().has(PumpProblem.OVERLOAD_WITHIN_CURVE));
    }

    /** At 90 % of the speed the power is 0.729 of it. */
    @Test
    void the_overload_is_looked_for_at_the_greatest_speed() {
        double most = KnownPump.shaftWatts(Math.sqrt(40 / 0.0075), 40 * 2 / 3.0) / 1000;
        PumpSet set = PumpSet.of(KnownPump.curve(), train(most * 0.74, 4));
        assertTrue(set.notes().has(PumpProblem.OVERLOAD_WITHIN_CURVE));
        assertFalse(set.withMaximumSpeed(SPEED.times(0.9)).notes().has(PumpProblem.OVERLOAD_WITHIN_CURVE));
    }

    private static DriveTrain train(double kilowatts, int poles) {
        Power rated = Power.kilowatts(kilowatts);
        return DriveTrain.of(Motor.ofClass(rated, 3, poles), Drive.reference(rated), SeparateLosses.ASSUMED);
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }
}

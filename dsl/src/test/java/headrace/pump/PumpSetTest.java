package headrace.pump;

import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.Motor;
import headrace.drive.SeparateLosses;
import headrace.problem.Note;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Speed;
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

    private static DriveTrain train(double kilowatts, int poles) {
        Power rated = Power.kilowatts(kilowatts);
        return DriveTrain.of(Motor.ofClass(rated, 3, poles), Drive.reference(rated), SeparateLosses.ASSUMED);
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }
}

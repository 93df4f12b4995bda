package headrace.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Drives by several declared losses, their class, what motors give where they stand, and figures of handbooks. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class DeclaredDriveTest {
    /** Frequency and torque current of the eight points of IEC 61800-9-2, in per cent. */
    private static final double[][] EIGHT = {
        {0, 25}, {0, 50}, {0, 100}, {50, 25}, {50, 50}, {50, 100}, {90, 50}, {90, 100}
    };

    private static final Power RATED = Power.kilowatts(5.5);
    private static final Motor MOTOR = Motor.ofClass(RATED, 3, 4);

    private static double known(double f, double i) {
        return 60 + 10 * f + 40 * i + 30 * f * i + 80 * i * i;
    }

    @Test
    void finds_the_surface_from_points_on_it() {
        DriveLosses losses = DriveLosses.of(points(DeclaredDriveTest::known));
        for (double f = 0; f <= 1; f += 0.2) {
            for (double i = 0; i <= 1; i += 0.2) {
                assertEquals(known(f, i), losses.wattsAt(f, i), 1e-10);
            }
        }
        assertTrue(losses.notes().isEmpty());
        assertEquals(known(0.9, 1), losses.referenceLoss().watts(), 1e-12);
    }

    /** 5.5 kW at 60 % speed and 36 % torque; with m = 0.3 the current is √(0.09 + 0.91·0.1296) = 0.456001. */
    @Test
    void loses_in_the_drive_what_was_declared() {
        Drive drive = Drive.declared(RATED, DriveLosses.of(points(DeclaredDriveTest::known)));
        assertEquals(known(0.6, 0.36), drivePart(drive), 1e-9);
        double current = Math.sqrt(0.09 + 0.91 * 0.36 * 0.36);
        assertEquals(known(0.6, current), drivePart(drive.withMagnetisingCurrent(Ratio.percent(30))), 1e-9);
    }

    @Test
    void says_where_its_declared_points_end_and_where_they_are_not_used() {
        Drive drive = Drive.declared(RATED, DriveLosses.of(points(DeclaredDriveTest::known)));
        DriveTrain train = DriveTrain.of(MOTOR, drive, SeparateLosses.ASSUMED);
        assertTrue(train.lossesAt(Power.watts(5500), Ratio.percent(100)).notes().isEmpty());
        assertTrue(
                train.lossesAt(Power.watts(100), Ratio.percent(50)).notes().has(DriveProblem.PART_LOAD_OUTSIDE_MODEL));
        assertFalse(train.notes().has(DriveProblem.DECLARED_LOSSES_UNUSED));
        assertTrue(train.with(new CombinedLosses()).notes().has(DriveProblem.DECLARED_LOSSES_UNUSED));
    }

    @Test
    void refuses_points_that_are_too_few_or_fall_below_zero() {
        List<LossPoint> eight = points(DeclaredDriveTest::known);
        refused(DriveProblem.TOO_FEW_LOSS_POINTS, () -> DriveLosses.of(eight.subList(0, 4)));
        refused(
                DriveProblem.LOSS_POINTS_ALIKE,
                () -> DriveLosses.of(List.of(eight.get(0), eight.get(1), eight.get(2), eight.get(0), eight.get(1))));
        refused(DriveProblem.DRIVE_LOSS_NOT_POSITIVE, () -> DriveLosses.of(points((f, i) -> -5 + 200 * i)));
        refused(
                DriveProblem.DRIVE_LOSS_NOT_POSITIVE,
                () -> DriveLosses.of(points((f, i) -> 100 * (i - 0.75) * (i - 0.75) - 1)));
        assertTrue(DriveLosses.of(List.of(eight.get(0), eight.get(1), eight.get(2), eight.get(3), eight.get(5)))
                .notes()
                .has(DriveProblem.LOSSES_WITHOUT_RESIDUAL));
    }

    /** EU 2019/1781 Annex I Table 6: 0.477 kW for 5.5 kW; 125 % is 596.25 W, 75 % is 357.75 W. */
    @ParameterizedTest
    @CsvSource({"597, 0", "596.25, 1", "477, 1", "358, 1", "357.75, 2", "100, 2"})
    void belongs_to_the_class_of_its_loss_at_the_reference_point(double watts, int ieClass) {
        assertEquals(
                ieClass, Drive.declared(RATED, Power.watts(watts)).ieClass().orElseThrow());
    }

    @Test
    void belongs_to_no_class_where_the_table_ends() {
        assertTrue(Drive.declared(Power.kilowatts(1200), Power.kilowatts(40))
                .ieClass()
                .isEmpty());
        assertEquals(1, Drive.reference(RATED).ieClass().orElseThrow());
        assertEquals(2, Drive.ie2(RATED).ieClass().orElseThrow());
    }

    /** Common practice: 10 % for 1000 m above 1000 m, 5 % for 5 K above 40 °C. */
    @Test
    void gives_less_where_the_air_is_thin_or_hot() {
        Motor high = MOTOR.at(new Site(Length.metres(2000), Temperature.celsius(45)));
        assertEquals(0.9 * 0.95 * 5500, high.usable().watts(), 1e-9);
        assertTrue(high.notes().has(DriveProblem.MOTOR_DERATED));
        assertEquals(
                5500,
                MOTOR.at(new Site(Length.metres(1000), Temperature.celsius(20)))
                        .usable()
                        .watts(),
                1e-9);
        assertTrue(MOTOR.notes().isEmpty());
        DriveTrain train = DriveTrain.onMains(high, SeparateLosses.ASSUMED);
        assertTrue(train.lossesAt(Power.watts(4800), Ratio.percent(100)).notes().has(DriveProblem.MOTOR_OVERLOAD));
        assertFalse(
                train.lossesAt(Power.watts(4700), Ratio.percent(100)).notes().has(DriveProblem.MOTOR_OVERLOAD));
        refused(DriveProblem.SITE_OUTSIDE_DERATING, () -> new Site(Length.metres(4001), Temperature.celsius(20)));
        refused(DriveProblem.SITE_OUTSIDE_DERATING, () -> new Site(Length.metres(0), Temperature.celsius(61)));
    }

    /** US DOE, Determining Electric Motor Load and Efficiency, from memory: 1800 less 1770 over 1800 less 1750. */
    @Test
    void takes_the_load_of_a_motor_from_its_slip() {
        Motor motor = Motor.premiumEnclosed(Power.horsepower(25), 4).atRatedSpeed(Speed.revolutionsPerMinute(1750));
        assertEquals(0.6, motor.torqueBySlip(Speed.revolutionsPerMinute(1770)).value(), 1e-12);
        assertEquals(0, motor.torqueBySlip(Speed.revolutionsPerMinute(1800)).value(), 1e-12);
        refused(DriveProblem.SLIP_UNKNOWN, () -> motor.torqueBySlip(Speed.revolutionsPerMinute(1801)));
        refused(DriveProblem.SLIP_UNKNOWN, () -> MOTOR.torqueBySlip(Speed.revolutionsPerMinute(1470)));
        Motor synchronous = MOTOR.atRatedSpeed(Speed.revolutionsPerMinute(1500));
        refused(DriveProblem.SLIP_UNKNOWN, () -> synchronous.torqueBySlip(Speed.revolutionsPerMinute(1470)));
    }

    /** Washington State Energy Office handbook, 1993, polynomial fits; computed with fluids 1.0.22. */
    @ParameterizedTest
    @CsvSource({"1, 0.5, 0.87052", "10, 0.25, 0.86794", "50, 0.5, 0.98891", "100, 0.2, 0.95718", "100, 0.5, 1"})
    void follows_the_handbook_at_part_load_of_a_motor(double horsepower, double load, double factor) {
        assertEquals(factor, HandbookLosses.motorFactor(horsepower, load), 5e-6);
    }

    /** US DOE Motor Systems Tip Sheet 11; bilinear, computed with fluids 1.0.22; the last four by hand. */
    @ParameterizedTest
    @CsvSource({
        "10, 0.2, 0.872",
        "50, 0.6, 0.954",
        "100, 0.2, 0.92",
        "3, 0.016, 0.31",
        "400, 1, 0.97",
        "4, 0.5, 0.915",
        "1, 2, 0.94"
    })
    void follows_the_table_of_drives(double horsepower, double load, double efficiency) {
        assertEquals(efficiency, HandbookLosses.driveEfficiency(horsepower, load), 1e-12);
    }

    /** 10 hp at 25 % load: the motor takes 2.5 hp over 0.917·0.86794, the drive sees that over 10 hp over 0.917. */
    @Test
    void puts_the_handbook_together() {
        Motor motor = Motor.premiumEnclosed(Power.horsepower(10), 4);
        DriveTrain train = DriveTrain.of(motor, Drive.reference(motor.rated()), new HandbookLosses());
        double taken = 2.5 / (0.917 * 0.86794);
        double driveEfficiency = 0.90 + 0.03 * (0.25 / 0.86794 - 0.25) / 0.17;
        double input =
                Power.watts(train.inputWatts(motor.rated().watts() / 4, 0.8)).toHorsepower();
        assertEquals(taken / driveEfficiency, input, 2e-5);
        assertTrue(train.lossesAt(motor.rated().times(0.01), Ratio.percent(30))
                .notes()
                .has(DriveProblem.PART_LOAD_OUTSIDE_MODEL));
        DriveTrain small = DriveTrain.of(
                Motor.ofClass(Power.kilowatts(1.1), 3, 4), Drive.reference(Power.kilowatts(1.1)), new HandbookLosses());
        assertTrue(small.lossesAt(Power.kilowatts(1), Ratio.percent(100))
                .notes()
                .has(DriveProblem.MOTOR_SIZE_OUTSIDE_MODEL));
    }

    @Test
    void refuses_shares_and_powers_that_cannot_be() {
        Drive drive = Drive.reference(RATED);
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> drive.withStandby(Power.watts(-1)));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> drive.withMagnetisingCurrent(Ratio.of(1)));
        DriveTrain train = DriveTrain.of(MOTOR, drive, SeparateLosses.ASSUMED);
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> train.withCableLoss(Ratio.percent(21)));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> train.withCableLoss(Ratio.percent(-1)));
        assertEquals(
                15,
                train.with(new CombinedLosses())
                                .withCableLoss(Ratio.percent(1))
                                .cableLoss()
                                .toPercent()
                        * 15,
                1e-9);
    }

    private static double drivePart(Drive drive) {
        double watts = 5500 * 0.36 * 0.6;
        return DriveTrain.of(MOTOR, drive, SeparateLosses.ASSUMED)
                .lossesAt(Power.watts(watts), Ratio.percent(60))
                .of(Losses.Place.DRIVE)
                .watts();
    }

    private static List<LossPoint> points(DoubleBinaryOperator watts) {
        List<LossPoint> points = new ArrayList<>();
        for (double[] each : EIGHT) {
            points.add(new LossPoint(
                    Ratio.percent(each[0]),
                    Ratio.percent(each[1]),
                    Power.watts(watts.applyAsDouble(each[0] / 100, each[1] / 100))));
        }
        return points;
    }

    private static void refused(DriveProblem problem, Runnable asking) {
        Refusal refusal = assertThrows(Refusal.class, asking::run);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
    }
}

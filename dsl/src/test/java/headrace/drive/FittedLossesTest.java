package headrace.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Motors whose losses are known, and what is found from points on them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FittedLossesTest {
    /** Speed and torque of the seven points of IEC 60034-2-3, in per cent. */
    private static final double[][] SEVEN = {{90, 100}, {50, 100}, {25, 100}, {90, 50}, {50, 50}, {50, 25}, {25, 25}};

    private static final Power RATED = Power.kilowatts(5.5);

    /** 560 W at full load: efficiency 5500/6060. */
    private static final Motor MOTOR = Motor.ofPlate(RATED, 4, Ratio.of(5500 / 6060.0));

    private static double known(double s, double t) {
        return 120 * Math.pow(s, 1.5) + 300 * t * t + 60 * Math.pow(s, 2.5) + 80 * t * t * s;
    }

    @Test
    void finds_the_terms_from_points_on_them() {
        FittedLosses fitted = FittedLosses.of(points(FittedLossesTest::known));
        for (double s = 0.1; s <= 1; s += 0.3) {
            for (double t = 0; t <= 1; t += 0.25) {
                assertEquals(known(s, t), fitted.wattsAt(s, t), 1e-9);
            }
        }
        assertEquals(0, fitted.residual().value(), 1e-12);
        assertTrue(fitted.notes().isEmpty());
    }

    /** Half torque at half speed: 120·0.353553 + 300·0.25 + 60·0.176777 + 80·0.125. */
    @Test
    void divides_the_losses_of_a_load_into_its_terms() {
        DriveTrain train = DriveTrain.onMains(MOTOR, FittedLosses.of(points(FittedLossesTest::known)));
        Losses losses = train.lossesAt(Power.watts(1375), Ratio.percent(50));
        double[] expected = {75, 42.42640687, 10.60660172, 10};
        for (int i = 0; i < 4; i++) {
            assertEquals(expected[i], losses.parts().get(i).power().watts(), 1e-7);
        }
        assertTrue(losses.notes().isEmpty(), losses.notes()::toString);
    }

    @Test
    void follows_other_exponents_where_they_are_chosen() {
        FittedLosses fitted = FittedLosses.of(
                points((s, t) -> 120 * Math.pow(s, 1.8) + 300 * t * t + 60 * s * s * s + 80 * t * t * s),
                new FittedLosses.Exponents(1.8, 3));
        assertEquals(
                120 * Math.pow(0.7, 1.8) + 300 * 0.36 + 60 * 0.343 + 80 * 0.36 * 0.7, fitted.wattsAt(0.7, 0.6), 1e-9);
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> new FittedLosses.Exponents(1.2, 2.5));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> new FittedLosses.Exponents(1.5, 3.1));
    }

    /** Losses that rise more slowly than s^1.5 would want negative friction. */
    @Test
    void has_no_term_below_zero() {
        FittedLosses fitted = FittedLosses.of(points((s, t) -> 200 * Math.pow(s, 1.3) + 300 * t * t));
        Losses losses = DriveTrain.onMains(MOTOR, fitted).lossesAt(Power.watts(2475), Ratio.percent(90));
        losses.parts().forEach(part -> assertTrue(part.power().watts() >= 0, part.name()));
        assertEquals(0, losses.parts().get(2).power().watts());
        assertTrue(fitted.residual().value() > 0);
    }

    @Test
    void closes_its_sum_with_a_drive_and_cables() {
        DriveTrain train = DriveTrain.of(
                        MOTOR, Drive.reference(RATED), FittedLosses.of(points(FittedLossesTest::known)))
                .withCableLoss(Ratio.percent(2));
        for (int percent = 10; percent <= 100; percent += 5) {
            double watts = 55.0 * percent * percent * percent / 1e4;
            Losses losses = train.lossesAt(Power.watts(watts), Ratio.percent(percent));
            double sum = watts;
            for (Losses.Part part : losses.parts()) {
                sum += part.power().watts();
            }
            assertEquals(sum, losses.input().watts(), 1e-12 * sum);
            assertEquals(sum, train.inputWatts(watts, percent / 100.0), 1e-12 * sum);
            assertEquals(
                    0.02,
                    losses.of(Losses.Place.CABLE_AND_FILTER).watts()
                            / (sum - losses.of(Losses.Place.CABLE_AND_FILTER).watts()),
                    1e-12);
        }
    }

    @Test
    void says_where_its_points_end_and_where_they_disagree_with_the_plate() {
        FittedLosses fitted = FittedLosses.of(points(FittedLossesTest::known));
        assertTrue(notes(MOTOR, fitted, 550, 100).has(DriveProblem.PART_LOAD_OUTSIDE_MODEL));
        assertTrue(notes(MOTOR, fitted, 100, 50).has(DriveProblem.PART_LOAD_OUTSIDE_MODEL));
        assertFalse(notes(MOTOR, fitted, 5500, 100).has(DriveProblem.PART_LOAD_OUTSIDE_MODEL));
        assertFalse(notes(MOTOR, fitted, 2475, 90).has(DriveProblem.FITTED_LOSS_DIFFERS));
        Motor better = Motor.ofPlate(RATED, 4, Ratio.percent(92));
        assertTrue(notes(better, fitted, 2475, 90).has(DriveProblem.FITTED_LOSS_DIFFERS));
    }

    @Test
    void says_that_four_points_leave_no_residual() {
        List<LossPoint> four = points(FittedLossesTest::known).subList(0, 4);
        FittedLosses fitted = FittedLosses.of(four);
        assertTrue(fitted.notes().has(DriveProblem.LOSSES_WITHOUT_RESIDUAL));
        assertTrue(DriveTrain.onMains(MOTOR, fitted).notes().has(DriveProblem.LOSSES_WITHOUT_RESIDUAL));
    }

    @Test
    void refuses_points_that_are_too_few_alike_or_impossible() {
        List<LossPoint> seven = points(FittedLossesTest::known);
        refused(DriveProblem.TOO_FEW_LOSS_POINTS, () -> FittedLosses.of(seven.subList(0, 3)));
        refused(DriveProblem.TOO_FEW_LOSS_POINTS, () -> FittedLosses.of(List.of()));
        List<LossPoint> oneSpeed = new ArrayList<>();
        for (int torque = 20; torque <= 100; torque += 20) {
            oneSpeed.add(point(100, torque, known(1, torque / 100.0)));
        }
        refused(DriveProblem.LOSS_POINTS_ALIKE, () -> FittedLosses.of(oneSpeed));
        refused(DriveProblem.IMPOSSIBLE_LOSS_POINT, () -> point(90, 100, 0));
        refused(DriveProblem.IMPOSSIBLE_LOSS_POINT, () -> point(130, 100, 5));
        refused(DriveProblem.IMPOSSIBLE_LOSS_POINT, () -> point(90, -1, 5));
        refused(DriveProblem.IMPOSSIBLE_LOSS_POINT, () -> point(90, 151, 5));
    }

    /** One loss doubled is noted; one typed in kW where the others are in W is refused. */
    @Test
    void notes_points_that_contradict_and_refuses_those_that_do_by_far() {
        List<LossPoint> doubled = new ArrayList<>(points(FittedLossesTest::known));
        doubled.set(4, point(50, 50, 2 * known(0.5, 0.5)));
        assertTrue(FittedLosses.of(doubled).notes().has(DriveProblem.LOSS_POINTS_CONTRADICT));
        doubled.set(4, point(50, 50, 1000 * known(0.5, 0.5)));
        refused(DriveProblem.LOSS_POINTS_CONTRADICT, () -> FittedLosses.of(doubled));
    }

    private static Notes notes(Motor motor, LossModel model, double watts, double percent) {
        return DriveTrain.onMains(motor, model)
                .lossesAt(Power.watts(watts), Ratio.percent(percent))
                .notes();
    }

    private static List<LossPoint> points(DoubleBinaryOperator watts) {
        List<LossPoint> points = new ArrayList<>();
        for (double[] each : SEVEN) {
            points.add(point(each[0], each[1], watts.applyAsDouble(each[0] / 100, each[1] / 100)));
        }
        return points;
    }

    private static LossPoint point(double speed, double torque, double watts) {
        return new LossPoint(Ratio.percent(speed), Ratio.percent(torque), Power.watts(watts));
    }

    private static void refused(DriveProblem problem, Runnable asking) {
        Refusal refusal = assertThrows(Refusal.class, asking::run);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
    }
}

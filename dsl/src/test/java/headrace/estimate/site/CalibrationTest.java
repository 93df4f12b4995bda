package headrace.estimate.site;

import static headrace.estimate.Sets.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.estimate.Cause;
import headrace.estimate.EstimateProblem;
import headrace.estimate.FlowEstimator;
import headrace.estimate.MapFactors;
import headrace.estimate.Method;
import headrace.estimate.PowerMap;
import headrace.estimate.Sets;
import headrace.estimate.ThroughLosses;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Pumps that hide a scale, a friction or a loss of head from their map. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CalibrationTest {
    private static final PowerMap PLAIN = ThroughLosses.of(Sets.set());
    private static final Ratio WITHIN = Ratio.percent(2);

    private final FlowEstimator estimator = Sets.estimator(Sets.usual());

    private static PowerMap hiding(double power, double watts, double head) {
        return PLAIN.calibrated(new MapFactors(power, watts, head), "what it hides");
    }

    private static KnownPoint point(PowerMap truth, double flow, double s) {
        double q = flow / 3600;
        return KnownPoint.of(m3ph(flow), Power.watts(truth.wireWatts(q, s)), Sets.SPEED.times(s))
                .with(Head.metres(truth.headMetres(q, s)));
    }

    /** Returns the greatest error at 20, 40 and 60 % of best flow and three speeds, in % of design flow. */
    private static double bias(FlowEstimator estimator, PowerMap truth) {
        double most = 0;
        for (double s : new double[] {0.6, 0.8, 1}) {
            AgainstTruth swept = AgainstTruth.of(estimator, truth, Method.POWER_AND_SPEED, Sets.SPEED.times(s));
            for (AgainstTruth.Row row : swept.rows()) {
                double x = row.truth().toCubicMetresPerHour() / s;
                if (x > 10 && x < 60) {
                    Flow error = row.error().orElseThrow();
                    most = Math.max(
                            most,
                            100 * Math.abs(error.si()) / estimator.design().si());
                }
            }
        }
        return most;
    }

    @Test
    void one_point_finds_a_hidden_scale_and_takes_the_bias_away_everywhere() {
        PowerMap truth = hiding(1.04, 0, 1);
        Calibration made = Calibration.of(estimator, List.of(point(truth, 45, 0.85)), WITHIN);
        assertEquals(Calibration.Kind.ONE_POINT, made.kind());
        assertEquals(1.04, made.factors().power(), 1e-9);
        assertTrue(bias(estimator, truth) > 3);
        assertTrue(bias(made.after(), truth) < 0.5);
        assertEquals(45, made.rows().get(0).after().orElseThrow().toCubicMetresPerHour(), 1e-7);
        assertEquals(0, made.rows().get(0).powerAfter().value(), 1e-12);
    }

    @Test
    void a_closed_valve_finds_a_hidden_friction_and_takes_the_bias_away_everywhere() {
        PowerMap truth = hiding(1, 150, 1);
        List<KnownPoint> closed = List.of(point(truth, 0, 0.5), point(truth, 0, 0.75), point(truth, 0, 1));
        Calibration made = Calibration.of(estimator, closed, WITHIN);
        assertEquals(Calibration.Kind.CLOSED_VALVE, made.kind());
        assertEquals(150, made.factors().offsetWatts(), 1e-6);
        assertTrue(bias(estimator, truth) > 3);
        assertTrue(bias(made.after(), truth) < 0.5);
    }

    @Test
    void two_points_find_a_scale_and_a_friction_together_where_one_point_leaves_a_bias() {
        PowerMap truth = hiding(0.97, 120, 1);
        Calibration one = Calibration.of(estimator, List.of(point(truth, 45, 1)), WITHIN);
        Calibration two = Calibration.of(estimator, List.of(point(truth, 15, 0.5), point(truth, 60, 1)), WITHIN);
        assertEquals(Calibration.Kind.TWO_POINTS, two.kind());
        assertEquals(0.97, two.factors().power(), 1e-9);
        assertEquals(120, two.factors().offsetWatts(), 1e-6);
        assertTrue(bias(two.after(), truth) < 0.5);
        assertTrue(bias(one.after(), truth) > 0.5);
    }

    /** A closed valve says nothing of a scale: it takes a part of it for friction. */
    @Test
    void a_closed_valve_does_not_mend_a_scale() {
        PowerMap truth = hiding(1.05, 0, 1);
        Calibration made = Calibration.of(estimator, List.of(point(truth, 0, 0.6), point(truth, 0, 1)), WITHIN);
        assertTrue(bias(made.after(), truth) > 0.5);
    }

    @Test
    void heads_that_were_read_give_the_factor_of_the_head() {
        PowerMap truth = hiding(1, 0, 0.93);
        Calibration made = Calibration.of(estimator, List.of(point(truth, 45, 0.85)), WITHIN);
        assertEquals(0.93, made.factors().head(), 1e-12);
        Calibration again = Calibration.of(made.after(), List.of(point(truth, 20, 0.7)), WITHIN);
        assertEquals(0.93, again.factors().head(), 1e-12);
        assertEquals(1, again.factors().power(), 1e-9);
    }

    @Test
    void calibration_shrinks_the_tolerance_of_the_map_and_says_that_it_was_done() {
        Calibration made = Calibration.of(
                estimator.with(Sets.usual().with(Cause.POWER_MAP, 0.08, 0)), List.of(point(PLAIN, 45, 1)), WITHIN);
        double after = made.after().budget().of(Cause.POWER_MAP).relative();
        assertTrue(after < 0.08 && after >= 0.02, () -> "half width " + after);
        assertTrue(made.before().notes().has(EstimateProblem.NOT_CALIBRATED));
        assertFalse(made.after().notes().has(EstimateProblem.NOT_CALIBRATED));
    }

    @Test
    void points_that_say_the_same_and_factors_far_from_one_are_refused() {
        KnownPoint point = point(PLAIN, 45, 0.85);
        KnownPoint far = KnownPoint.of(m3ph(45), point.power().times(3), point.speed());
        for (List<KnownPoint> wrong : List.of(List.of(point, point), List.of(far), List.<KnownPoint>of())) {
            assertEquals(
                    EstimateProblem.IMPOSSIBLE_CALIBRATION,
                    assertThrows(Refusal.class, () -> Calibration.of(estimator, wrong, WITHIN))
                            .problem());
        }
    }

    @Test
    void an_estimator_with_the_real_map_is_right_along_every_flow() {
        AgainstTruth swept = AgainstTruth.of(estimator, estimator.map(), Method.POWER_AND_SPEED, Sets.SPEED.times(0.8));
        assertEquals(0, swept.greatestError().value(), 1e-9);
        assertEquals(swept.rows().size(), swept.held());
    }

    @Test
    void a_reading_off_the_map_is_a_row_without_an_estimate() {
        PowerMap truth = hiding(1.2, 0, 1);
        AgainstTruth swept = AgainstTruth.of(estimator, truth, Method.POWER_AND_SPEED, Sets.SPEED);
        AgainstTruth.Row last = swept.rows().get(swept.rows().size() - 1);
        assertTrue(last.nearest().isEmpty());
        assertEquals(EstimateProblem.READING_ABOVE_MAP, last.offMap().orElseThrow());
    }
}

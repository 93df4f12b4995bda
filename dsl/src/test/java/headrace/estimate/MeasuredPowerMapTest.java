package headrace.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.drive.LossModel;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Torque;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MeasuredPowerMapTest {
    private static final PowerMap SET = ThroughLosses.of(Sets.set(Sets.turning(), LossModel.named("separate")));

    static PowerMap measured() {
        return MeasuredPowerMap.of("P-B", Sets.WATER, points(0.5, 0.625, 0.75, 0.875, 1));
    }

    private static List<MeasuredPoint> points(double... speeds) {
        List<MeasuredPoint> points = new ArrayList<>();
        for (double s : speeds) {
            for (int i = 0; i <= 8; i++) {
                double q = 15 * i * s;
                points.add(new MeasuredPoint(
                        Sets.m3ph(q),
                        Head.metres(SET.headMetres(q / 3600, s)),
                        Power.watts(SET.wireWatts(q / 3600, s)),
                        Sets.SPEED.times(s)));
            }
        }
        return points;
    }

    @Test
    void meets_what_was_measured_and_lies_close_to_it_between_the_speeds() {
        PowerMap map = measured();
        for (double s : new double[] {0.5, 0.55, 0.7, 0.8, 0.95, 1}) {
            for (double x : new double[] {0, 30, 60, 90, 120}) {
                double q = x * s / 3600;
                assertEquals(SET.wireWatts(q, s), map.wireWatts(q, s), 0.003 * SET.wireWatts(q, s));
                assertEquals(SET.headMetres(q, s), map.headMetres(q, s), 1e-9 * SET.headMetres(0, 1));
            }
        }
    }

    /** Powers that go with the cube of speed exactly are met between the speeds exactly. */
    @Test
    void is_exact_where_the_affinity_laws_hold() {
        List<MeasuredPoint> points = new ArrayList<>();
        for (double s : new double[] {0.5, 1}) {
            for (double x = 0; x <= 100; x += 20) {
                points.add(new MeasuredPoint(
                        Sets.m3ph(x * s),
                        Head.metres(s * s * (30 - 0.002 * x * x)),
                        Power.watts(s * s * s * (3000 + 40 * x)),
                        Sets.SPEED.times(s)));
            }
        }
        MeasuredPowerMap map = MeasuredPowerMap.of("P-C", Sets.WATER, points);
        assertEquals(0.343 * (3000 + 40 * 50), map.wireWatts(35 / 3600.0, 0.7), 1e-9);
        assertEquals(0.49 * (30 - 0.002 * 2500), map.headMetres(35 / 3600.0, 0.7), 1e-12);
    }

    @Test
    void slopes_agree_with_differences() {
        PowerMap map = measured().calibrated(new MapFactors(1.02, 30, 0.98), "moved");
        MapRow row = new MapRow(1);
        double q = 0.011;
        double s = 0.8;
        row.flow[0] = q;
        map.fill(s, row, 1);
        double dq = 1e-7;
        double ds = 1e-6;
        assertEquals((map.wireWatts(q + dq, s) - map.wireWatts(q - dq, s)) / (2 * dq), row.wireOverFlow[0], 1e-3);
        assertEquals((map.wireWatts(q, s + ds) - map.wireWatts(q, s - ds)) / (2 * ds), row.wireOverSpeed[0], 1e-4);
        assertEquals((map.headMetres(q + dq, s) - map.headMetres(q - dq, s)) / (2 * dq), row.headOverFlow[0], 1e-5);
        assertEquals((map.headMetres(q, s + ds) - map.headMetres(q, s - ds)) / (2 * ds), row.headOverSpeed[0], 1e-6);
    }

    @Test
    void readings_go_back_to_their_flow_without_any_model_of_losses() {
        FlowEstimator estimator = FlowEstimator.of(measured(), Sets.usual());
        FlowEstimate estimate = estimator.estimate(Method.POWER_AND_SPEED, Sets.reading(measured(), 40, 0.8));
        assertEquals(40, estimate.roots().get(0).flow().value().toCubicMetresPerHour(), 1e-8);
        assertTrue(!estimate.notes().has(EstimateProblem.NOT_CALIBRATED));
    }

    @Test
    void a_torque_cannot_be_looked_up_in_it() {
        FlowEstimator estimator = FlowEstimator.of(measured(), Sets.usual());
        Reading reading = Reading.NONE.with(Torque.newtonMetres(20)).with(Sets.SPEED);
        Refusal refusal = assertThrows(Refusal.class, () -> estimator.estimate(reading));
        assertEquals(EstimateProblem.NO_SHAFT_POWER, refusal.problem());
    }

    @Test
    void another_density_scales_it_and_says_what_that_leaves_out() {
        Liquid glycol = Liquid.propyleneGlycol(Ratio.percent(30), Temperature.celsius(20));
        PowerMap heavier = measured().in(glycol);
        double ratio = glycol.density().over(Sets.WATER.density()).value();
        assertEquals(ratio * measured().wireWatts(0.01, 0.9), heavier.wireWatts(0.01, 0.9), 1e-9);
        assertTrue(heavier.notes().has(EstimateProblem.DENSITY_ON_WIRE));
    }

    @Test
    void one_speed_or_two_flows_make_no_map() {
        for (List<MeasuredPoint> few : List.of(points(1), points(0.5, 1).subList(0, 11))) {
            assertEquals(
                    EstimateProblem.IMPOSSIBLE_POWER_MAP,
                    assertThrows(Refusal.class, () -> MeasuredPowerMap.of("P-B", Sets.WATER, few))
                            .problem());
        }
    }
}

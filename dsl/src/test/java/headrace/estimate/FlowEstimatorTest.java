package headrace.estimate;

import static headrace.estimate.Sets.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FlowEstimatorTest {
    private final FlowEstimator estimator = Sets.estimator(Sets.usual());
    private final PowerMap map = estimator.map();

    private static boolean holds(FlowEstimate estimate, double flow) {
        return estimate.roots().stream()
                .anyMatch(root ->
                        Math.abs(root.flow().value().toCubicMetresPerHour() - flow) <= 1e-9 * Math.max(1, flow));
    }

    @Test
    void readings_without_error_go_back_to_their_flow_by_every_method() {
        for (double flow : new double[] {0, 0.4, 20, 45, 80, 94, 100, 119}) {
            for (double s : new double[] {0.3, 0.62, 1}) {
                Reading all = Sets.reading(map, flow * s, s);
                double torque = map.shaftWatts(flow * s / 3600, s) / (s * Sets.SPEED.si());
                Reading withTorque = Reading.NONE
                        .with(Torque.newtonMetres(torque))
                        .with(all.speed().orElseThrow());
                Reading unclocked = Reading.NONE
                        .with(all.power().orElseThrow())
                        .with(all.head().orElseThrow());
                assertTrue(holds(estimator.estimate(Method.POWER_AND_SPEED, all), flow * s));
                assertTrue(holds(estimator.estimate(Method.HEAD_AND_SPEED, all), flow * s));
                assertTrue(holds(estimator.estimate(withTorque), flow * s));
                assertTrue(holds(estimator.estimate(unclocked), flow * s), () -> flow + " at " + s);
                assertTrue(holds(estimator.estimate(all), flow * s));
            }
        }
    }

    @Test
    void readings_go_back_to_their_flow_under_every_loss_model_and_in_a_viscous_liquid() {
        Liquid glycol = Liquid.propyleneGlycol(Ratio.percent(40), Temperature.celsius(0));
        for (LossModel losses : LossModel.all()) {
            FlowEstimator plain = FlowEstimator.of(ThroughLosses.of(Sets.set(Sets.turning(), losses)), Sets.usual());
            for (FlowEstimator each : List.of(plain, plain.in(glycol))) {
                Reading reading = Sets.reading(each.map(), 40, 0.9);
                assertTrue(holds(each.estimate(reading), 40));
                assertTrue(holds(each.estimate(Method.POWER_AND_HEAD, reading), 40));
            }
        }
    }

    @Test
    void a_heavier_liquid_taken_for_water_reads_as_more_flow_until_it_is_corrected() {
        Liquid glycol = Liquid.propyleneGlycol(Ratio.percent(40), Temperature.celsius(60));
        FlowEstimator corrected = estimator.in(glycol);
        Reading reading = Reading.of(Power.watts(corrected.map().wireWatts(40 / 3600.0, 0.9)), Sets.SPEED.times(0.9));
        assertTrue(estimator.estimate(reading).roots().get(0).flow().value().toCubicMetresPerHour() > 41);
        assertTrue(holds(corrected.estimate(reading), 40));
    }

    /** P = 4200 + 68·Q − 0.36·Q² is the same at Q and at 188.889 − Q. */
    @Test
    void power_that_turns_gives_both_flows_and_never_one_of_them_alone() {
        FlowEstimate estimate = estimator.estimate(Method.POWER_AND_SPEED, Sets.reading(map, 80, 1));
        assertEquals(2, estimate.roots().size());
        assertEquals(80, estimate.roots().get(0).flow().value().toCubicMetresPerHour(), 1e-7);
        assertEquals(188.8888889 - 80, estimate.roots().get(1).flow().value().toCubicMetresPerHour(), 1e-6);
        assertTrue(estimate.notes().has(EstimateProblem.TWO_FLOWS));
        Refusal refusal = assertThrows(Refusal.class, estimate::flow);
        assertEquals(EstimateProblem.TWO_FLOWS, refusal.problem());
        assertTrue(refusal.getMessage().contains("80 m³/h or 108.9 m³/h"), refusal::getMessage);
        assertTrue(refusal.getMessage().contains("Read the head too"), refusal::getMessage);
        assertEquals(108.8888889, estimate.nearest(m3ph(120)).flow().value().toCubicMetresPerHour(), 1e-6);
    }

    @Test
    void the_head_tells_two_flows_apart() {
        FlowEstimate estimate = estimator.estimate(Sets.reading(map, 80, 1));
        assertEquals(Method.MIX, estimate.method());
        assertEquals(80, estimate.flow().toCubicMetresPerHour(), 1e-7);
    }

    /** The greatest shaft power is 7411.11 W, at 94.44 m³/h; the least 4200 W. */
    @Test
    void a_reading_off_the_map_is_refused_with_the_nearest_bound() {
        double most = map.wireWatts(94.4444444 / 3600, 1);
        Refusal above =
                assertThrows(Refusal.class, () -> estimator.estimate(Reading.of(Power.watts(most + 1), Sets.SPEED)));
        assertEquals(EstimateProblem.READING_ABOVE_MAP, above.problem());
        assertTrue(above.getMessage().contains(Power.watts(most) + " at 94.44 m³/h"), above::getMessage);
        double least = map.wireWatts(0, 1);
        Refusal below =
                assertThrows(Refusal.class, () -> estimator.estimate(Reading.of(Power.watts(least - 1), Sets.SPEED)));
        assertEquals(EstimateProblem.READING_BELOW_MAP, below.problem());
        assertTrue(below.getMessage().contains(Power.watts(least) + " at 0 m³/h"), below::getMessage);
        assertEquals(
                1,
                estimator
                        .estimate(Reading.of(Power.watts(most), Sets.SPEED))
                        .roots()
                        .size());
    }

    @Test
    void readings_that_no_error_brings_together_are_not_mixed() {
        Reading torn = Sets.reading(map, 60, 0.9).with(Head.metres(map.headMetres(20 / 3600.0, 0.9)));
        Refusal refusal = assertThrows(Refusal.class, () -> estimator.estimate(torn));
        assertEquals(EstimateProblem.READINGS_DISAGREE, refusal.problem());
    }

    @Test
    void a_reading_without_enough_in_it_and_a_speed_out_of_range_are_refused() {
        Reading power = Reading.NONE.with(Power.watts(3000));
        assertEquals(
                EstimateProblem.READING_MISSING,
                assertThrows(Refusal.class, () -> estimator.estimate(power)).problem());
        assertEquals(
                EstimateProblem.SPEED_OUTSIDE_ESTIMATE,
                assertThrows(Refusal.class, () -> estimator.estimate(power.with(Sets.SPEED.times(1.1))))
                        .problem());
        assertEquals(
                EstimateProblem.IMPOSSIBLE_READING,
                assertThrows(Refusal.class, () -> Reading.NONE.with(Power.watts(-1)))
                        .problem());
    }

    /** Without losses u_Q = u_P/P_Q; P_Q = 68 − 0.72·45 = 35.6 W/(m³/h), P = 6531 W. */
    @Test
    void linear_propagation_is_the_law_of_jcgm_100_worked_by_hand() {
        ErrorBudget errors = ErrorBudget.NONE
                .with(Cause.TORQUE_READING, 0.01, 0)
                .with(Cause.SPEED_READING, 0.002, 0)
                .with(Cause.POWER_MAP, 0.02, 0);
        FlowEstimator each = Sets.estimator(errors);
        double torque = 6531 / Sets.SPEED.si();
        FlowRoot root = each.estimate(
                        Reading.NONE.with(Torque.newtonMetres(torque)).with(Sets.SPEED))
                .roots()
                .get(0);
        double noise = 0.01 * 6531 / 35.6;
        // T = P/ω goes with 2·4200·s + 68·Q at s = 1 for a share of speed more: (8400 + 3060)/ω
        double speed = 0.002 * (8400 + 3060) / 35.6;
        double byMap = 0.02 / Math.sqrt(3) * 6531 / 35.6;
        assertEquals(Math.hypot(noise, speed), root.flow().random().toCubicMetresPerHour(), 1e-6);
        assertEquals(byMap, root.flow().systematic().toCubicMetresPerHour(), 1e-6);
        assertEquals(
                2 * Math.sqrt(noise * noise + speed * speed + byMap * byMap),
                root.flow().expanded().toCubicMetresPerHour(),
                1e-6);
        double all = noise * noise + speed * speed + byMap * byMap;
        assertEquals(Cause.POWER_MAP, root.shares().get(0).cause());
        assertEquals(byMap * byMap / all, root.shares().get(0).share().value(), 1e-9);
        assertEquals(
                1, root.shares().stream().mapToDouble(s -> s.share().value()).sum(), 1e-12);
    }

    /** dQ = dH/H_Q with H_Q = −0.012 − 0.0028·45 = −0.138 m/(m³/h) at full speed. */
    @Test
    void an_error_of_the_head_goes_through_the_slope_of_the_head() {
        FlowEstimator each = Sets.estimator(ErrorBudget.NONE.with(Cause.HEAD_READING, 0, 0.1));
        FlowRoot root =
                each.estimate(Method.HEAD_AND_SPEED, Sets.reading(map, 45, 1)).only();
        assertEquals(0.1 / 0.138, root.flow().standard().toCubicMetresPerHour(), 1e-8);
        assertEquals(0.1, root.head().standard().metres(), 1e-12);
        assertEquals(-1, root.correlation(), 1e-12);
    }

    @Test
    void averaging_shrinks_noise_by_the_root_of_the_number_and_leaves_the_rest() {
        Reading reading = Sets.reading(map, 45, 0.85);
        FlowRoot one =
                estimator.estimate(Method.POWER_AND_SPEED, reading).roots().get(0);
        FlowEstimate many = estimator.averagedOver(25, 0).estimate(Method.POWER_AND_SPEED, reading);
        assertEquals(
                one.flow().random().si() / 5,
                many.roots().get(0).flow().random().si(),
                1e-15);
        assertEquals(
                one.flow().systematic().si(),
                many.roots().get(0).flow().systematic().si(),
                1e-15);
        assertTrue(many.notes().has(EstimateProblem.AVERAGED_READINGS));
        // 25 readings with a correlation of 0.5 are worth 25·0.5/1.5 = 8.333
        FlowRoot alike = estimator
                .averagedOver(25, 0.5)
                .estimate(Method.POWER_AND_SPEED, reading)
                .roots()
                .get(0);
        assertEquals(
                one.flow().random().si() / Math.sqrt(25 / 3.0),
                alike.flow().random().si(),
                1e-15);
    }

    @Test
    void the_mix_is_never_less_sure_than_the_better_of_the_two() {
        for (double flow : new double[] {5, 20, 45, 70, 90, 110}) {
            for (double s : new double[] {0.4, 0.7, 1}) {
                Reading reading = Sets.reading(map, flow * s, s);
                double mixed = estimator
                        .estimate(reading)
                        .nearest(m3ph(flow * s))
                        .flow()
                        .standard()
                        .si();
                for (Method one : List.of(Method.POWER_AND_SPEED, Method.HEAD_AND_SPEED)) {
                    double alone = estimator
                            .estimate(one, reading)
                            .nearest(m3ph(flow * s))
                            .flow()
                            .standard()
                            .si();
                    assertTrue(mixed <= alone * (1 + 1e-9), () -> one + " at " + flow + " and " + s);
                }
            }
        }
    }

    @Test
    void a_flow_near_the_turn_of_the_power_is_blind_and_one_far_from_it_is_not() {
        FlowEstimate near = estimator.estimate(Method.POWER_AND_SPEED, Sets.reading(map, 93, 1));
        FlowEstimate far = estimator.estimate(Method.POWER_AND_SPEED, Sets.reading(map, 30, 1));
        assertTrue(near.roots().get(0).blind());
        assertTrue(near.notes().has(EstimateProblem.BLIND_ZONE));
        assertFalse(far.roots().get(0).blind());
    }

    /** Where the power turns nothing bounds the flow but the map, which reaches from 0 to 120 m³/h. */
    @Test
    void at_the_greatest_power_the_uncertainty_is_no_more_than_the_map() {
        Reading most = Reading.of(Power.watts(map.wireWatts(94.44444444444 / 3600, 1)), Sets.SPEED);
        for (FlowRoot root : estimator.estimate(most).roots()) {
            assertTrue(root.flow().standard().toCubicMetresPerHour() <= 120 * (1 + 1e-12));
            assertTrue(root.head().standard().metres() <= 31.2 * (1 + 1e-12));
            assertTrue(root.blind());
        }
    }

    @Test
    void an_estimate_says_what_was_not_calibrated_and_which_errors_were_assumed() {
        FlowEstimate assumed = Sets.estimator(ErrorBudget.ASSUMED).estimate(Sets.reading(map, 45, 0.85));
        assertTrue(assumed.notes().has(EstimateProblem.NOT_CALIBRATED));
        assertTrue(assumed.notes().has(EstimateProblem.ERRORS_ASSUMED));
        assertFalse(estimator.notes().has(EstimateProblem.ERRORS_ASSUMED));
    }
}

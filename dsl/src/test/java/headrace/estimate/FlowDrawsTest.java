package headrace.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.numeric.RandomStreams;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Torque;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FlowDrawsTest {
    private static final int DRAWS = 20_000;

    private final FlowEstimator estimator = Sets.estimator(Sets.usual()
            .with(Cause.TORQUE_READING, 0.01, 0)
            .with(Cause.METER_SCALE, 0.005, 0)
            .with(Cause.LOSSES, 0.10, 0)
            .with(Cause.DENSITY, 0.005, 0));

    private Reading torque(double flow, double s) {
        double watts = estimator.map().shaftWatts(flow / 3600, s);
        return Reading.NONE
                .with(Torque.newtonMetres(watts / (s * Sets.SPEED.si())))
                .with(Sets.SPEED.times(s));
    }

    /** Where the map is nearly straight over the width of the band, both methods must agree within 3 %. */
    @Test
    void draws_and_linear_propagation_agree_for_every_method_where_the_map_is_nearly_straight() {
        for (Method method : Method.values()) {
            Reading reading = method == Method.TORQUE_AND_SPEED
                    ? torque(30, 1)
                    : Sets.reading(estimator.map(), method == Method.HEAD_AND_SPEED ? 80 : 30, 1);
            FlowEstimate estimate = estimator.estimate(method, reading);
            FlowRoot root = estimate.roots().get(0);
            FlowDraws draws = FlowDraws.of(estimate, root, 100_000, 7);
            double linear = root.flow().standard().si();
            assertEquals(linear, draws.deviationOfFlow().si(), 0.03 * linear, method::toString);
            double head = root.head().standard().si();
            assertEquals(head, draws.deviationOfHead().si(), 0.03 * head, method::toString);
            assertEquals(root.correlation(), draws.correlation(), 0.03, method::toString);
        }
    }

    @Test
    void draws_and_linear_propagation_agree_on_a_map_that_was_measured() {
        PowerMap map = MeasuredPowerMapTest.measured();
        FlowEstimator each = FlowEstimator.of(map, Sets.usual());
        FlowEstimate estimate = each.estimate(Method.POWER_AND_SPEED, Sets.reading(map, 30, 0.9));
        FlowRoot root = estimate.roots().get(0);
        FlowDraws draws = FlowDraws.of(estimate, root, DRAWS, 3);
        assertEquals(
                root.flow().standard().si(),
                draws.deviationOfFlow().si(),
                0.03 * root.flow().standard().si());
    }

    @Test
    void the_same_seed_gives_the_same_draws_and_another_seed_others() {
        FlowEstimate estimate = estimator.estimate(Sets.reading(estimator.map(), 40, 0.8));
        assertArrayEquals(
                FlowDraws.of(estimate, 1000, 5).flows(),
                FlowDraws.of(estimate, 1000, 5).flows());
        assertFalse(FlowDraws.of(estimate, 1000, 5)
                .lowFlow()
                .equals(FlowDraws.of(estimate, 1000, 6).lowFlow()));
    }

    @Test
    void another_seed_moves_the_band_by_no_more_than_chance() {
        FlowEstimate estimate = estimator.estimate(Method.POWER_AND_SPEED, Sets.reading(estimator.map(), 40, 0.8));
        FlowRoot root = estimate.roots().get(0);
        FlowDraws one = FlowDraws.of(estimate, root, DRAWS, 1);
        FlowDraws two = FlowDraws.of(estimate, root, DRAWS, 2);
        // the deviation of a sample deviation is σ/√(2n); of a difference of two √2 times that
        double chance = 5 * root.flow().standard().si() / Math.sqrt(DRAWS);
        assertEquals(one.deviationOfFlow().si(), two.deviationOfFlow().si(), chance);
    }

    @Test
    void draws_that_fall_off_the_map_are_counted_and_said() {
        Reading reading = Sets.reading(estimator.map(), 0.5, 0.5);
        FlowEstimate estimate = estimator.estimate(Method.POWER_AND_SPEED, reading);
        FlowDraws draws = FlowDraws.of(estimate, estimate.roots().get(0), DRAWS, 9);
        FlowDraws.Counts counts = draws.counts();
        assertTrue(counts.below() > DRAWS / 10, counts::toString);
        assertEquals(DRAWS, counts.kept() + counts.below() + counts.above());
        assertTrue(draws.notes().has(EstimateProblem.DRAWS_OFF_MAP));
        assertTrue(draws.notes().has(EstimateProblem.LINEAR_BAND_DOUBTFUL));
    }

    @Test
    void without_errors_every_draw_is_the_estimate() {
        FlowEstimator sure = estimator.with(ErrorBudget.NONE);
        FlowEstimate estimate = sure.estimate(Sets.reading(sure.map(), 40, 0.8));
        FlowDraws draws = FlowDraws.of(estimate, 200, 1);
        assertEquals(40, draws.lowFlow().toCubicMetresPerHour(), 1e-9);
        assertEquals(40, draws.highFlow().toCubicMetresPerHour(), 1e-9);
    }

    /**
     * A pump that differs from its map, and readings with noise, a thousand times: how often the stated 95 % band holds
     * the true flow. The deviation of that share is √(0.05·0.95/1000) = 0.7 %.
     */
    @Test
    void the_band_of_95_percent_holds_the_true_flow_in_93_to_97_of_100_runs() {
        for (Method method : new Method[] {Method.POWER_AND_SPEED, Method.HEAD_AND_SPEED, Method.MIX}) {
            assertEquals(0.95, coverage(method), 0.02, method::toString);
        }
    }

    private static double coverage(Method method) {
        FlowEstimator each = Sets.estimator(Sets.usual());
        PowerMap map = each.map();
        double q = (method == Method.HEAD_AND_SPEED ? 70 : 35) / 3600.0;
        RandomStreams streams = RandomStreams.of(2024);
        double[] first = new double[1000];
        double[] second = new double[1000];
        double[] third = new double[1000];
        double[] unused = new double[1000];
        streams.fillNormal(0, 0, first, second, 1000);
        streams.fillNormal(2, 0, third, unused, 1000);
        int held = 0;
        for (int i = 0; i < 1000; i++) {
            double pump = 1 + 0.02 * (2 * streams.uniform(4, i) - 1);
            double head = 1 + 0.01 * (2 * streams.uniform(5, i) - 1);
            Reading reading = Reading.of(
                            Power.watts(map.wireWatts(q, 0.9, pump, 1) * (1 + 0.01 * first[i])),
                            Sets.SPEED.times(0.9 * (1 + 0.002 * second[i])))
                    .with(Head.metres(head * map.headMetres(q, 0.9) * (1 + 0.01 * third[i])));
            held += holds(each, method, reading, q) ? 1 : 0;
        }
        return held / 1000.0;
    }

    /** A run whose power and head are refused as too far apart counts as one that missed. */
    private static boolean holds(FlowEstimator each, Method method, Reading reading, double q) {
        try {
            Spread<Flow> flow = each.estimate(method, reading)
                    .nearest(Flow.cubicMetresPerSecond(q))
                    .flow();
            return Math.abs(flow.value().si() - q) <= 1.959964 * flow.standard().si();
        } catch (Refusal refused) {
            assertEquals(EstimateProblem.READINGS_DISAGREE, refused.problem());
            return false;
        }
    }

    @Test
    void the_drawn_band_holds_what_the_quantiles_say() {
        FlowEstimate estimate = estimator.estimate(Sets.reading(estimator.map(), 40, 0.8));
        FlowDraws draws = FlowDraws.of(estimate, 10_000, 4);
        long below = java.util.Arrays.stream(draws.flows())
                .filter(q -> q < draws.flowAt(Ratio.percent(10)).si())
                .count();
        assertEquals(1000, below, 1);
    }
}

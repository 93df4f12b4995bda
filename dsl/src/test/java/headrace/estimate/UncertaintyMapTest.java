package headrace.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.units.Flow;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class UncertaintyMapTest {
    private final FlowEstimator estimator =
            Sets.estimator(Sets.usual().with(Cause.LOSSES, 0.1, 0).with(Cause.POWER_READING, 0.01, 10));

    private UncertaintyMap map(Method method) {
        double[] flows = new double[24];
        double[] speeds = new double[9];
        java.util.Arrays.setAll(flows, j -> 5.0 * (j + 1) / 3600);
        java.util.Arrays.setAll(speeds, i -> 0.3 + 0.08 * i);
        return UncertaintyMap.of(estimator, method, flows, speeds);
    }

    @Test
    void a_cell_is_as_sure_as_the_estimate_of_its_own_reading() {
        for (Method method : new Method[] {Method.POWER_AND_SPEED, Method.HEAD_AND_SPEED, Method.MIX}) {
            UncertaintyMap map = map(method);
            for (int i = 0; i < map.rows(); i += 2) {
                for (int j = 1; j < map.columns(); j += 4) {
                    if (map.covers(i, j)) {
                        Reading reading = Sets.reading(estimator.map(), 3600 * map.flow(j), map.speed(i));
                        FlowRoot root =
                                estimator.estimate(method, reading).nearest(Flow.cubicMetresPerSecond(map.flow(j)));
                        double expected = root.flow().standard().si();
                        double reach = 120 / 3600.0 * map.speed(i); // an estimate is no less sure than the whole map
                        double flow = Math.min(reach, map.flowUncertainty(i, j));
                        assertEquals(expected, flow, 1e-6 * expected, method::toString);
                        double head = root.head().standard().si();
                        double most = 31.2 * map.speed(i) * map.speed(i);
                        assertEquals(head, Math.min(most, map.headUncertainty(i, j)), 1e-6 * head, method::toString);
                        assertEquals(root.blind(), map.blind(i, j));
                    }
                }
            }
        }
    }

    /** P is the same at Q and 188.889·s − Q, so flows from 68.889·s on have another one below 120·s. */
    @Test
    void cells_whose_power_has_another_flow_are_ambiguous() {
        UncertaintyMap map = map(Method.POWER_AND_SPEED);
        for (int i = 0; i < map.rows(); i++) {
            for (int j = 0; j < map.columns(); j++) {
                double x = 3600 * map.flow(j) / map.speed(i);
                assertEquals(map.covers(i, j) && x > 68.8888889, map.ambiguous(i, j), () -> "Q/s = " + x);
            }
        }
    }

    @Test
    void cells_beyond_the_map_are_not_covered() {
        UncertaintyMap map = map(Method.POWER_AND_SPEED);
        for (int j = 0; j < map.columns(); j++) {
            assertEquals(3600 * map.flow(j) <= 120 * 0.3 * (1 + 1e-9), map.covers(0, j));
        }
        assertTrue(map.toString().contains("blind"));
    }

    @Test
    void flows_and_speeds_must_increase() {
        assertThrows(
                IllegalArgumentException.class,
                () -> UncertaintyMap.of(
                        estimator, Method.POWER_AND_SPEED, new double[] {0.02, 0.01}, new double[] {1}));
    }
}

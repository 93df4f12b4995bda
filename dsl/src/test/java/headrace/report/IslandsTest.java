package headrace.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.data.PumpFile;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.numeric.Contour;
import headrace.pump.PumpSet;
import headrace.units.Power;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class IslandsTest {
    private static final double RIGHT_TO = 0.005;

    /** At the points of the contour and half-way between them: the speed is found from flow and head. */
    @ParameterizedTest
    @ValueSource(strings = {"heron-65", "plover-40", "bittern-150", "dunlin-100", "merganser-80"})
    void an_island_is_right_to_half_a_per_cent_when_evaluated_again(String pump) {
        PumpSet set = set(pump);
        PumpCurve curve = set.curve();
        List<Contour> islands = Islands.of(set, Islands.levels(set));
        assertTrue(islands.size() >= 5);
        for (Contour island : islands) {
            for (double at = 0; at <= island.size() - 1; at += 0.5) {
                int i = (int) Math.floor(at);
                int j = (int) Math.ceil(at);
                double q = (island.x(i) + island.x(j)) / 2;
                double head = (island.y(i) + island.y(j)) / 2;
                double s = curve.extendedTo(curve.highestFlow().times(1.05)).speedRatioFor(q, head);
                assertEquals(island.level(), curve.efficiency(q, s), RIGHT_TO * island.level(), pump + " " + at);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"heron-65", "plover-40", "bittern-150", "dunlin-100", "merganser-80"})
    void an_island_that_leaves_the_map_stays_open_and_ends_at_its_edge(String pump) {
        PumpSet set = set(pump);
        PumpCurve curve = set.curve();
        double slowest = set.minimumSpeed().over(curve.speed()).value();
        double fastest = set.maximumSpeed().over(curve.speed()).value();
        for (Contour island : Islands.of(set, Islands.levels(set))) {
            assertFalse(island.closed());
            for (int end : new int[] {0, island.size() - 1}) {
                double q = island.x(end);
                double s = curve.extendedTo(curve.highestFlow().times(1.05)).speedRatioFor(q, island.y(end));
                double x = q / s;
                boolean atSpeedLimit = Math.abs(s - slowest) < 1e-6 || Math.abs(s - fastest) < 1e-6;
                boolean atEndOfTest = Math.abs(x - curve.highestFlow().si()) < 1e-6 * x;
                assertTrue(atSpeedLimit || atEndOfTest, pump + ": " + island.level() + " ends at s " + s + ", x " + x);
            }
        }
    }

    /**
     * By the affinity laws alone the efficiency is the same along each parabola, from the least speed to the greatest.
     */
    @Test
    void without_a_loss_over_speed_an_island_is_the_parabola_of_one_flow() {
        PumpSet heron = set("heron-65");
        PumpSet set = heron.with(heron.curve().withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity()));
        List<Contour> islands = Islands.of(set, 0.6);
        assertEquals(1, islands.size());
        Contour island = islands.get(0);
        double first = island.y(0) / (island.x(0) * island.x(0));
        for (int i = 1; i < island.size(); i++) {
            assertEquals(first, island.y(i) / (island.x(i) * island.x(i)), 1e-9 * first);
        }
    }

    @Test
    void levels_are_round_and_below_the_best_efficiency() {
        PumpSet set = set("heron-65");
        double best = set.curve().bestEfficiencyPoint().efficiency().value();
        for (double level : Islands.levels(set)) {
            assertTrue(level < best);
            assertEquals(Math.rint(level * 100), level * 100, 1e-9);
        }
        assertEquals(
                Islands.levels(set).length,
                Arrays.stream(Islands.levels(set)).distinct().count());
    }

    private static PumpSet set(String pump) {
        var test = PumpFile.read(Path.of("..", "demo-data", "pumps", pump + ".csv"));
        PumpCurve curve = PumpCurve.fit(test);
        Power rated = Power.kilowatts(30);
        return PumpSet.of(
                        curve,
                        DriveTrain.of(
                                Motor.ofClass(rated, 3, test.poles().orElseThrow()),
                                Drive.reference(rated),
                                LossModel.all().get(0)))
                .withMinimumSpeed(curve.speed().times(0.3));
    }
}

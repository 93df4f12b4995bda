package headrace.curve;

import static headrace.curve.CurveProblem.FLOW_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.IMPOSSIBLE_EFFICIENCIES;
import static headrace.curve.CurveProblem.SIMILARITY_SCATTER;
import static headrace.curve.CurveProblem.SPEED_OUT_OF_RANGE;
import static headrace.curve.Pumps.RATED;
import static headrace.curve.Pumps.evenly;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.parabola;
import static headrace.curve.Pumps.points;
import static headrace.curve.Pumps.refusal;
import static headrace.curve.Pumps.test;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SpeedCollapseTest {
    private static List<TestPoint> atFullSpeed() {
        return points(evenly(9, 0, 100), q -> 32 - 0.0016 * q * q, q -> 3000 + 70 * q);
    }

    /** Readings at three speeds, of which the slower take so much more power, and give so much less head. */
    private static PumpTest readings(double morePower, double lessHead) {
        List<TestPoint> points = new ArrayList<>(atFullSpeed());
        for (double s : new double[] {0.8, 0.6}) {
            double power = 1 + morePower * (1 - s);
            double head = 1 - lessHead * (1 - s);
            for (TestPoint point : atFullSpeed()) {
                TestPoint moved = point.atSpeed(RATED.times(s));
                points.add(new TestPoint(
                        moved.flow(),
                        moved.head().times(head),
                        moved.shaftPower().times(power),
                        moved.speed()));
            }
        }
        return test(points);
    }

    @Test
    void finds_no_scatter_where_the_affinity_laws_hold() {
        SpeedCollapse collapse = SpeedCollapse.of(readings(0, 0));
        assertEquals(3, collapse.groups().size());
        for (SpeedCollapse.Group group : collapse.groups()) {
            assertEquals(9, group.points());
            assertEquals(0, group.headScatter().value(), 1e-12);
            assertEquals(0, group.powerScatter().value(), 1e-12);
            assertEquals(1, group.efficiencyShare().value(), 1e-12);
            assertTrue(group.similar());
        }
        assertEquals(0.6 * 1450, collapse.groups().get(0).speed().toRevolutionsPerMinute(), 1e-9);
        assertFalse(PumpCurve.fit(readings(0, 0)).notes().has(SIMILARITY_SCATTER));
    }

    /** 12.5 % more power at 0.6 of the speed: 5 % for each tenth, so 1.05 and 1/1.05 of the efficiency. */
    @Test
    void measures_the_efficiency_that_is_left_at_each_speed() {
        SpeedCollapse collapse = SpeedCollapse.of(readings(0.125, 0));
        assertEquals(1 / 1.05, collapse.groups().get(0).efficiencyShare().value(), 1e-12);
        assertEquals(1 / 1.025, collapse.groups().get(1).efficiencyShare().value(), 1e-12);
        PumpCurve curve = collapse.measuredCurve();
        PumpCurve slow = curve.atSpeed(Ratio.of(0.6));
        Flow flow = m3ph(30);
        double affinity = curve.shaftPowerAt(flow.times(1 / 0.6)).watts() * 0.216;
        assertEquals(1.05 * affinity, slow.shaftPowerAt(flow).watts(), 1e-8);
        assertEquals(parabolaHead(50) * 0.36, slow.headAt(flow).metres(), 1e-9);
        assertTrue(curve.basis().choices().toString().contains("as measured from 60 % to 100 % of the tested speed"));
    }

    private static double parabolaHead(double q) {
        return 32 - 0.0016 * q * q;
    }

    /** Differences of one share at every point scatter by that share of the root mean square, over the greatest. */
    @Test
    void measures_the_scatter_worked_by_hand() {
        SpeedCollapse.Group slow = SpeedCollapse.of(readings(0, 0.1)).groups().get(0);
        double squares = 0;
        for (double q : evenly(9, 0, 100)) {
            squares += Math.pow(0.04 * parabolaHead(q), 2);
        }
        assertEquals(Math.sqrt(squares / 9) / 32, slow.headScatter().value(), 1e-12);
        assertFalse(slow.similar());
    }

    @Test
    void counts_slip_under_load_as_one_speed() {
        List<TestPoint> slipping = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            slipping.add(atFullSpeed().get(i).atSpeed(RATED.times(1.03 - 0.01 * i)));
        }
        assertEquals(1, SpeedCollapse.of(test(slipping)).groups().size());
        refusal(IMPOSSIBLE_EFFICIENCIES, () -> SpeedCollapse.of(test(slipping)).measured());
    }

    @Test
    void is_noted_by_a_fit_to_readings_that_do_not_fall_together() {
        PumpCurve curve = PumpCurve.fit(readings(0.6, 0.3));
        assertTrue(curve.notes().has(SIMILARITY_SCATTER));
        assertTrue(
                curve.notes().toString().contains("the readings near 870 rpm lie "),
                curve.notes().toString());
    }

    @Test
    void is_refused_where_the_readings_have_no_flow_in_common() {
        List<TestPoint> points = new ArrayList<>(atFullSpeed());
        points.add(new TestPoint(m3ph(80), Head.metres(1), Power.watts(2000), RATED.times(0.5)));
        refusal(FLOW_OUT_OF_RANGE, () -> SpeedCollapse.of(test(points)));
    }

    @Test
    void gives_a_model_that_holds_between_the_measured_speeds_only() {
        EfficiencyOverSpeed model = EfficiencyOverSpeed.measured(new TreeMap<>(
                Map.of(Ratio.of(0.5), Ratio.of(0.9), Ratio.of(0.75), Ratio.of(0.96), Ratio.of(1), Ratio.of(1))));
        PumpCurve curve = parabola().withEfficiencyOverSpeed(model);
        double best = curve.bestEfficiencyPoint().efficiency().value();
        assertEquals(
                0.9 * best,
                curve.atSpeed(Ratio.of(0.5)).bestEfficiencyPoint().efficiency().value(),
                1e-12);
        assertEquals(
                0.96 * best,
                curve.atSpeed(Ratio.of(0.75)).bestEfficiencyPoint().efficiency().value(),
                1e-12);
        String message =
                refusal(SPEED_OUT_OF_RANGE, () -> curve.atSpeed(Ratio.of(0.49))).getMessage();
        assertTrue(message.contains("at least 725 rpm and at most 1450 rpm"), message);
        refusal(SPEED_OUT_OF_RANGE, () -> curve.atSpeed(Ratio.of(1.01)));
        assertEquals(725, curve.atSpeed(Ratio.of(0.5 * (1 - 1e-12))).speed().toRevolutionsPerMinute(), 1e-6);
        refusal(SPEED_OUT_OF_RANGE, () -> parabola().atSpeed(Ratio.of(0.4)).withEfficiencyOverSpeed(model));
        assertEquals(model.shaftWatts(7, 0.5, 0.7), model.shaftWatts(7, 0.1, 0.7));
        assertEquals(7, model.shaftWatts(7, 2, 0.7), 1e-12);
    }

    @Test
    void refuses_measured_efficiencies_that_mean_nothing() {
        refusal(IMPOSSIBLE_EFFICIENCIES, () -> measured(Map.of(Ratio.of(1), Ratio.of(1))));
        refusal(IMPOSSIBLE_EFFICIENCIES, () -> measured(Map.of(Ratio.of(1), Ratio.of(1), Ratio.of(0.5), Ratio.of(0))));
        refusal(
                IMPOSSIBLE_EFFICIENCIES,
                () -> measured(Map.of(Ratio.of(1), Ratio.of(0.9), Ratio.of(0.5), Ratio.of(1))));
        refusal(
                IMPOSSIBLE_EFFICIENCIES,
                () -> measured(Map.of(Ratio.of(0.9), Ratio.of(1), Ratio.of(0.5), Ratio.of(1))));
        refusal(IMPOSSIBLE_EFFICIENCIES, () -> measured(Map.of(Ratio.of(1), Ratio.of(1), Ratio.of(0), Ratio.of(1))));
    }

    private static EfficiencyOverSpeed measured(Map<Ratio, Ratio> shares) {
        return EfficiencyOverSpeed.measured(new TreeMap<>(shares));
    }
}

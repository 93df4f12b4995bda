package headrace.curve;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.liquid.Liquid;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The shaft power of a curve read backwards, and how head and power change. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PowerOfACurveTest {
    /** P = 4200 W + 68·Q − 0.36·Q² turns at 68/0.72 = 94.444 m³/h and 4200 + 68²/1.44 = 7411.11 W. */
    private static PumpCurve turning() {
        return Pumps.curve(new double[] {31.2, -0.012, -0.0014}, new double[] {4200, 68, -0.36}, 0, 120);
    }

    @Test
    void power_that_turns_has_a_rising_and_a_falling_stretch_at_every_speed() {
        List<PowerStretch> stretches = turning().powerStretches();
        assertEquals(2, stretches.size());
        assertTrue(stretches.get(0).rising());
        assertFalse(stretches.get(1).rising());
        assertEquals(94.4444444, 3600 * stretches.get(0).toAt(1), 1e-6);
        assertEquals(94.4444444 / 2, 3600 * stretches.get(1).fromAt(0.5), 1e-6);
        assertArrayEquals(
                new double[] {0, 94.4444444 / 2, 60},
                java.util.Arrays.stream(turning().powerStopsAt(0.5))
                        .map(q -> 3600 * q)
                        .toArray(),
                1e-6);
    }

    @Test
    void a_power_goes_back_to_its_flow_on_the_stretch_where_it_lies() {
        PumpCurve curve = turning();
        for (EfficiencyOverSpeed model : models()) {
            backAndForth(curve.withEfficiencyOverSpeed(model));
            backAndForth(curve.withEfficiencyOverSpeed(model).atSpeed(Ratio.percent(90)));
        }
        backAndForth(Pumps.parabola());
        backAndForth(Pumps.curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100, 0.5, -0.003}, 0, 115));
    }

    @Test
    void a_power_goes_back_to_its_flow_in_a_viscous_liquid() {
        backAndForth(Pumps.parabola().inLiquid(Liquid.propyleneGlycol(Ratio.percent(50), Temperature.celsius(0))));
    }

    private static List<EfficiencyOverSpeed> models() {
        return List.of(
                EfficiencyOverSpeed.affinity(),
                EfficiencyOverSpeed.correlation(),
                EfficiencyOverSpeed.mechanicalLoss(Power.watts(150), 1));
    }

    private static void backAndForth(PumpCurve curve) {
        for (PowerStretch stretch : curve.powerStretches()) {
            double[] speeds = new double[900];
            double[] flows = new double[900];
            double[] watts = new double[900];
            for (int i = 0; i < 900; i++) {
                speeds[i] = 0.7 + 0.001 * (i % 31) * 10;
                double share = 0.01 + 0.98 * i / 900;
                flows[i] = stretch.fromAt(speeds[i]) + share * (stretch.toAt(speeds[i]) - stretch.fromAt(speeds[i]));
                watts[i] = curve.shaftWatts(flows[i], speeds[i]);
            }
            double[] found = new double[900];
            stretch.fillFlows(watts, speeds, found, 900);
            for (int i = 0; i < 900; i++) {
                assertEquals(flows[i], found[i], 1e-9 * flows[i] + 1e-12);
                assertEquals(flows[i], stretch.flowAt(watts[i], speeds[i]), 1e-9 * flows[i] + 1e-12);
            }
        }
    }

    @Test
    void a_power_beyond_a_stretch_has_an_infinite_flow_with_the_sign_of_the_miss() {
        PowerStretch rising = turning().powerStretches().get(0);
        double[] found = new double[3];
        rising.fillFlows(new double[] {4199, 5000, 7412}, new double[] {1, 1, 1}, found, 3);
        assertEquals(Double.NEGATIVE_INFINITY, found[0]);
        assertTrue(Double.isFinite(found[1]));
        assertEquals(Double.POSITIVE_INFINITY, found[2]);
        assertEquals(Double.NEGATIVE_INFINITY, rising.flowAt(4199, 1));
        assertEquals(Double.POSITIVE_INFINITY, rising.flowAt(7412, 1));
    }

    /** By the affinity laws P(Q, s) = s·(4200·s² + 68·Q·s − 0.36·Q²) and H(Q, s) = 31.2·s² − 0.012·Q·s − 0.0014·Q². */
    @Test
    void slopes_of_an_affinity_map_are_those_worked_by_hand() {
        PumpCurve curve = turning().withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
        CurveArrays at = CurveArrays.of(new double[] {50 / 3600.0}, new double[1]);
        CurveSlopes slopes = CurveSlopes.of(1);
        curve.fillAt(0.8, at, 1);
        curve.fillSlopesAt(0.8, at, slopes, 1);
        assertEquals(3600 * (-0.012 * 0.8 - 0.0028 * 50), slopes.headOverFlow()[0], 1e-9);
        assertEquals(62.4 * 0.8 - 0.012 * 50, slopes.headOverSpeed()[0], 1e-11);
        assertEquals(3600 * (68 * 0.64 - 0.72 * 50 * 0.8), slopes.powerOverFlow()[0], 1e-6);
        assertEquals(3 * 4200 * 0.64 + 2 * 68 * 50 * 0.8 - 0.36 * 2500, slopes.powerOverSpeed()[0], 1e-8);
    }

    @Test
    void slopes_agree_with_differences_for_every_model_and_liquid() {
        for (EfficiencyOverSpeed model : models()) {
            agree(turning().withEfficiencyOverSpeed(model), 1e-9);
            agree(turning().withEfficiencyOverSpeed(model).atSpeed(Ratio.percent(90)), 1e-9);
        }
        agree(turning().inLiquid(Liquid.propyleneGlycol(Ratio.percent(50), Temperature.celsius(0))), 1e-6);
    }

    private static void agree(PumpCurve curve, double share) {
        double q = 40 / 3600.0;
        double s = 0.75;
        double dq = 1e-5 * q;
        double ds = 1e-5 * s;
        CurveArrays at = CurveArrays.of(new double[] {q}, new double[1]);
        CurveSlopes slopes = CurveSlopes.of(1);
        curve.fillAt(s, at, 1);
        curve.fillSlopesAt(s, at, slopes, 1);
        close((curve.headMetres(q + dq, s) - curve.headMetres(q - dq, s)) / (2 * dq), slopes.headOverFlow()[0], share);
        close((curve.headMetres(q, s + ds) - curve.headMetres(q, s - ds)) / (2 * ds), slopes.headOverSpeed()[0], share);
        close((curve.shaftWatts(q + dq, s) - curve.shaftWatts(q - dq, s)) / (2 * dq), slopes.powerOverFlow()[0], share);
        close(
                (curve.shaftWatts(q, s + ds) - curve.shaftWatts(q, s - ds)) / (2 * ds),
                slopes.powerOverSpeed()[0],
                share);
    }

    private static void close(double expected, double found, double share) {
        assertEquals(expected, found, share * Math.abs(expected));
    }
}

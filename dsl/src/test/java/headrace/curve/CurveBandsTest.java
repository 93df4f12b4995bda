package headrace.curve;

import static headrace.curve.CurveProblem.FLOW_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.IMPOSSIBLE_CONFIDENCE;
import static headrace.curve.Pumps.evenly;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.parabola;
import static headrace.curve.Pumps.points;
import static headrace.curve.Pumps.refusal;
import static headrace.curve.Pumps.test;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CurveBandsTest {
    private static final Ratio SURE = Ratio.percent(95);

    private static PumpCurve noisy(int seed) {
        Random random = new Random(seed);
        return PumpCurve.fit(test(points(
                evenly(11, 0, 100),
                q -> 32 - 0.01 * q - 0.0016 * q * q + 0.1 * random.nextGaussian(),
                q -> 3000 + 70 * q - 0.1 * q * q + 15 * random.nextGaussian())));
    }

    @Test
    void are_those_of_the_fit_at_the_tested_speed() {
        PumpCurve curve = noisy(1);
        CurveBands bands = curve.bands().orElseThrow();
        Flow flow = m3ph(40);
        assertEquals(curve.headFit().meanBandAt(flow, SURE).orElseThrow(), bands.meanHeadAt(flow, SURE));
        assertEquals(curve.headFit().singleTestBandAt(flow, SURE).orElseThrow(), bands.singleHeadAt(flow, SURE));
        assertEquals(curve.powerFit().meanBandAt(flow, SURE).orElseThrow(), bands.meanShaftPowerAt(flow, SURE));
        assertEquals(curve.powerFit().singleTestBandAt(flow, SURE).orElseThrow(), bands.singleShaftPowerAt(flow, SURE));
    }

    @Test
    void shrink_with_the_square_and_the_cube_of_speed() {
        PumpCurve curve = noisy(2).withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
        CurveBands full = curve.bands().orElseThrow();
        CurveBands half = curve.atSpeed(Ratio.percent(50)).bands().orElseThrow();
        assertEquals(
                full.meanHeadAt(m3ph(80), SURE).metres() / 4,
                half.meanHeadAt(m3ph(40), SURE).metres(),
                1e-12);
        assertEquals(
                full.singleShaftPowerAt(m3ph(80), SURE).watts() / 8,
                half.singleShaftPowerAt(m3ph(40), SURE).watts(),
                1e-9);
        assertEquals(
                full.meanEfficiencyAt(m3ph(80), SURE).value(),
                half.meanEfficiencyAt(m3ph(40), SURE).value(),
                1e-12);
    }

    /** A mechanical loss is no scatter of the test: only the rest of the power, and its error, goes with the cube. */
    @Test
    void hold_no_error_of_a_mechanical_loss() {
        PumpCurve curve = noisy(2).withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.watts(100), 1));
        CurveBands half = curve.atSpeed(Ratio.percent(50)).bands().orElseThrow();
        assertEquals(
                curve.bands().orElseThrow().meanShaftPowerAt(m3ph(80), SURE).watts() / 8,
                half.meanShaftPowerAt(m3ph(40), SURE).watts(),
                1e-9);
    }

    @Test
    void join_head_and_power_in_the_efficiency() {
        PumpCurve curve = noisy(3);
        CurveBands bands = curve.bands().orElseThrow();
        Flow flow = m3ph(60);
        double head = bands.meanHeadAt(flow, SURE).over(curve.headAt(flow)).value();
        double power = bands.meanShaftPowerAt(flow, SURE)
                .over(curve.shaftPowerAt(flow))
                .value();
        double expected = curve.efficiencyAt(flow).value() * Math.sqrt(head * head + power * power);
        assertEquals(expected, bands.meanEfficiencyAt(flow, SURE).value(), 1e-14);
        assertEquals(0, bands.meanEfficiencyAt(Flow.ZERO, SURE).value());
    }

    /** Over 400 seeded tests the best points scatter as the bands foretell: 90 % of them hold the true best point. */
    @Test
    void hold_the_true_best_point_as_often_as_they_say() {
        PumpCurve truth = PumpCurve.fit(test(
                points(evenly(11, 0, 100), q -> 32 - 0.01 * q - 0.0016 * q * q, q -> 3000 + 70 * q - 0.1 * q * q)));
        double best = truth.bestEfficiencyPoint().flow().si();
        int flowHeld = 0;
        int efficiencyHeld = 0;
        for (int seed = 0; seed < 400; seed++) {
            PumpCurve curve = noisy(5000 + seed);
            CurveBands bands = curve.bands().orElseThrow();
            double band =
                    bands.bestEfficiencyFlow(Ratio.percent(90)).orElseThrow().si();
            flowHeld += Math.abs(curve.bestEfficiencyPoint().flow().si() - best) <= band ? 1 : 0;
            Flow at = Flow.cubicMetresPerSecond(best);
            double error =
                    curve.efficiencyAt(at).value() - truth.efficiencyAt(at).value();
            efficiencyHeld += Math.abs(error)
                            <= bands.meanEfficiencyAt(at, Ratio.percent(90)).value()
                    ? 1
                    : 0;
        }
        assertEquals(0.9, flowHeld / 400.0, 0.05);
        assertEquals(0.9, efficiencyHeld / 400.0, 0.05);
    }

    @Test
    void say_nothing_of_a_best_point_at_the_end_of_the_test() {
        Random random = new Random(8);
        PumpCurve shortTest = PumpCurve.fit(test(
                points(evenly(9, 0, 50), q -> 32 - 0.001 * q * q + 0.02 * random.nextGaussian(), q -> 3000 + 60 * q)));
        assertTrue(shortTest.bands().orElseThrow().bestEfficiencyFlow(SURE).isEmpty());
    }

    @Test
    void are_refused_outside_the_test_and_for_no_confidence() {
        CurveBands bands = noisy(4).bands().orElseThrow();
        refusal(FLOW_OUT_OF_RANGE, () -> bands.meanHeadAt(m3ph(101), SURE));
        refusal(FLOW_OUT_OF_RANGE, () -> bands.meanShaftPowerAt(m3ph(101), SURE));
        refusal(IMPOSSIBLE_CONFIDENCE, () -> bands.bestEfficiencyFlow(Ratio.of(1)));
        assertTrue(parabola().bands().isEmpty());
    }

    /**
     * With a constant power known exactly, Q·H is greatest at Q = a/(2b) on the line a − b·Q; its error follows from
     * those of a and b: (σ/Q)² = (σa/a)² + (σb/b)² + 2·cov/(a·b), where cov is of a and the slope −b.
     */
    @Test
    void shift_the_best_point_as_worked_out_by_hand() {
        double[] flows = evenly(9, 0, 100);
        double[] errors = {0.2, -0.1, 0.05, -0.2, 0.1, -0.05, 0.15, -0.1, -0.05};
        List<TestPoint> points = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            points.add(Pumps.point(flows[i], 30 - 0.2 * flows[i] + errors[i], 5000));
        }
        PumpCurve curve = PumpCurve.fit(test(points));
        assertEquals(1, curve.headFit().degree());
        double a = curve.headFit().coefficients().get(0);
        double b = -curve.headFit().coefficients().get(1);
        double mean = 50 / 3600.0;
        double spread = 0;
        for (double q : flows) {
            spread += Math.pow(q / 3600 - mean, 2);
        }
        double s = curve.headFit().residual().orElseThrow().metres();
        double varA = s * s * (1.0 / 9 + mean * mean / spread);
        double varB = s * s / spread;
        double covariance = -s * s * mean / spread;
        double relative = Math.sqrt(varA / (a * a) + varB / (b * b) + 2 * covariance / (a * b));
        double t = 2.364624251592785;
        assertEquals(a / (2 * b), curve.bestEfficiencyPoint().flow().si(), 1e-12);
        assertEquals(
                t * relative * a / (2 * b),
                curve.bands()
                        .orElseThrow()
                        .bestEfficiencyFlow(SURE)
                        .orElseThrow()
                        .si(),
                1e-9);
    }
}

package headrace.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PumpCurveTest {
    private static final double PER_HOUR = 3600;

    /** H = 40 m − 0.0025·Q², P = 4 kW + 60 W·Q, with Q in m³/h. */
    private static PumpCurve closedForm() {
        return PumpCurve.of(
                "P-A",
                Speed.revolutionsPerMinute(1450),
                Liquid.water(Temperature.celsius(20)),
                new CurveFormula(
                        Polynomial.of(40, 0, -0.0025 * PER_HOUR * PER_HOUR),
                        Polynomial.of(4000, 60 * PER_HOUR),
                        Flow.ZERO,
                        m3ph(120)));
    }

    /** By hand: 0.0025·60² = 9, so s = √((15.4 + 9)/40). */
    @Test
    void finds_the_speed_for_a_duty_in_closed_form() {
        PumpCurve curve = closedForm();
        Speed speed = curve.speedFor(new Duty(m3ph(60), Head.metres(15.4)));
        assertEquals(Math.sqrt(24.4 / 40), speed.over(curve.speed()).value(), 1e-12);
        assertEquals(15.4, curve.atSpeed(speed).headAt(m3ph(60)).metres(), 1e-12);
    }

    @Test
    void obeys_the_affinity_laws_along_the_whole_curve() {
        PumpCurve curve = closedForm().withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
        for (double s : new double[] {0.35, 0.8, 1, 1.15}) {
            PumpCurve moved = curve.atSpeed(Ratio.of(s));
            for (int i = 0; i <= 100; i++) {
                Flow flow = curve.highestFlow().times(i / 100.0);
                assertEquals(
                        curve.headAt(flow).metres() * s * s,
                        moved.headAt(flow.times(s)).metres(),
                        1e-11);
                assertEquals(
                        curve.shaftPowerAt(flow).watts() * s * s * s,
                        moved.shaftPowerAt(flow.times(s)).watts(),
                        1e-8);
            }
        }
    }

    @Test
    void refuses_a_flow_beyond_the_test() {
        Refusal refusal = assertThrows(Refusal.class, () -> closedForm().headAt(m3ph(121)));
        assertEquals(CurveProblem.FLOW_OUT_OF_RANGE, refusal.problem());
    }

    private static Flow m3ph(double value) {
        return Flow.cubicMetresPerHour(value);
    }
}

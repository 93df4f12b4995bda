package headrace.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SystemCurveTest {
    private static final Duty DESIGN = new Duty(m3ph(100), Head.metres(25));

    /** H = 10 m + 0.0015·Q² with Q in m³/h. */
    @ParameterizedTest(name = "{0} m³/h, {1} m")
    @CsvSource({"0, 10", "60, 15.4", "100, 25", "120, 31.6"})
    void rises_from_its_static_head_through_its_point(double flow, double head) {
        SystemCurve curve = SystemCurve.through(DESIGN, Head.metres(10), 2);
        assertEquals(head, curve.headAt(m3ph(flow)).metres(), 1e-12 * head);
    }

    /** By hand: 25·0.5^1.8 = 7.17936… */
    @Test
    void follows_its_exponent() {
        SystemCurve curve = SystemCurve.through(DESIGN, Head.ZERO, 1.8);
        assertEquals(25 * Math.exp(1.8 * Math.log(0.5)), curve.headAt(m3ph(50)).metres(), 1e-12);
        assertEquals(6.25, SystemCurve.through(DESIGN).headAt(m3ph(50)).metres(), 1e-12);
        assertTrue(curve.basis().choices().get(0).endsWith("friction with flow to the 1.8"));
    }

    @Test
    void is_refused_where_no_circuit_is_like_it() {
        assertThrows(Refusal.class, () -> SystemCurve.through(DESIGN, Head.metres(25.1), 2));
        assertThrows(Refusal.class, () -> SystemCurve.through(DESIGN, Head.metres(-1), 2));
        assertThrows(Refusal.class, () -> SystemCurve.through(DESIGN, Head.ZERO, 0.9));
        assertThrows(Refusal.class, () -> SystemCurve.through(DESIGN, Head.ZERO, Double.NaN));
        assertThrows(Refusal.class, () -> SystemCurve.through(new Duty(Flow.ZERO, Head.metres(5))));
        Refusal refusal =
                assertThrows(Refusal.class, () -> SystemCurve.through(DESIGN).headAt(m3ph(-1)));
        assertEquals(CircuitProblem.NEGATIVE_SYSTEM_FLOW, refusal.problem());
    }

    private static Flow m3ph(double value) {
        return Flow.cubicMetresPerHour(value);
    }
}

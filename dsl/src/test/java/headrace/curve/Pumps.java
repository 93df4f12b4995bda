package headrace.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.function.Executable;

/** Invented pumps for the tests of curves. */
final class Pumps {
    static final Speed RATED = Speed.revolutionsPerMinute(1450);
    static final Liquid WATER = Liquid.water(Temperature.celsius(20));
    static final double PER_HOUR = 3600;

    private Pumps() {}

    static Flow m3ph(double value) {
        return Flow.cubicMetresPerHour(value);
    }

    /** A curve from formulas in m and W of the flow in m³/h. */
    static PumpCurve curve(double[] head, double[] power, double from, double to) {
        return PumpCurve.of(
                "P-A",
                RATED,
                WATER,
                new CurveFormula(
                        Polynomial.of(head).ofScaled(PER_HOUR),
                        Polynomial.of(power).ofScaled(PER_HOUR),
                        m3ph(from),
                        m3ph(to)));
    }

    /** H = 40 m − 0.0025·Q², P = 4 kW + 100 W·Q, with Q in m³/h. */
    static PumpCurve parabola() {
        return curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 0, 120);
    }

    /** H = 20 m + 0.1·Q − 0.002·Q²: rises by 1.25 m to 21.25 m at 25 m³/h, and is 20 m again at 50 m³/h. */
    static PumpCurve drooping() {
        return curve(new double[] {20, 0.1, -0.002}, new double[] {2000, 60}, 0, 80);
    }

    /** H = 40 m − 0.05·Q + 0.001·Q² − 0.00002·Q³, falling throughout. */
    static PumpCurve cubic() {
        return curve(new double[] {40, -0.05, 0.001, -0.00002}, new double[] {4000, 110, 0.2}, 0, 110);
    }

    /** Points of a head in m and a power in W over flows in m³/h, all at one speed. */
    static List<TestPoint> points(double[] flows, DoubleUnaryOperator head, DoubleUnaryOperator power) {
        List<TestPoint> points = new ArrayList<>();
        for (double q : flows) {
            points.add(point(q, head.applyAsDouble(q), power.applyAsDouble(q)));
        }
        return points;
    }

    static TestPoint point(double flow, double head, double watts) {
        return new TestPoint(m3ph(flow), Head.metres(head), Power.watts(watts), RATED);
    }

    static PumpTest test(List<TestPoint> points) {
        return PumpTest.of("P-A", RATED, WATER, points);
    }

    static double[] evenly(int count, double from, double to) {
        double[] flows = new double[count];
        for (int i = 0; i < count; i++) {
            flows[i] = from + (to - from) * i / (count - 1);
        }
        return flows;
    }

    static Refusal refusal(Problem problem, Executable asking) {
        Refusal refusal = assertThrows(Refusal.class, asking);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal;
    }
}

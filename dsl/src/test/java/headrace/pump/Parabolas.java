package headrace.pump;

import headrace.curve.CurveFormula;
import headrace.curve.PumpCurve;
import headrace.numeric.Polynomial;
import headrace.units.Flow;

/** Made-up pumps whose heads are polynomials in m of the flow in m³/h, for tests of several pumps together. */
public final class Parabolas {
    private Parabolas() {}

    /** H = 40 m − 0.0025·Q² from no flow to 125 m³/h. */
    public static PumpCurve steep() {
        return curve("P-A", 125, 40, 0, -0.0025);
    }

    /** H = 20 m + 0.1·Q − 0.002·Q²: 20 m at no flow, 21.25 m at 25 m³/h, and 20 m again at 50 m³/h. */
    public static PumpCurve drooping() {
        return curve("P-D", 100, 20, 0.1, -0.002);
    }

    /** A head falling throughout that is no parabola: H = 40 m − 0.05·Q + 0.001·Q² − 0.00002·Q³. */
    public static PumpCurve cubic() {
        return curve("P-C", 120, 40, -0.05, 0.001, -0.00002);
    }

    /** Returns a curve of a head from no flow to a greatest flow in m³/h; its power is large enough for any of them. */
    public static PumpCurve curve(String name, double to, double... head) {
        return PumpCurve.of(
                name,
                KnownPump.SPEED,
                KnownPump.WATER,
                new CurveFormula(
                        Polynomial.of(head).ofScaled(3600),
                        Polynomial.of(20_000, 100).ofScaled(3600),
                        Flow.ZERO,
                        KnownPump.m3ph(to)));
    }
}

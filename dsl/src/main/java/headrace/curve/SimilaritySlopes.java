package headrace.curve;

import headrace.numeric.Polynomial;
import headrace.numeric.Slope;
import headrace.numeric.SmoothCurve;

/**
 * How head and shaft power of a similarity map change with flow and with speed, at one speed.
 *
 * <p>With {@code H = s²·h(Q/s)} Euler's theorem gives {@code s·H_s = 2·H − Q·H_Q}; likewise {@code s·A_s = 3·A − Q·A_Q}
 * for the power by the affinity laws, of which the shaft power is {@code shift(s) + scale(s)·A}.
 */
final class SimilaritySlopes {
    private final double s;
    private final SmoothCurve headSlope;
    private final SmoothCurve powerSlope;
    private final double shift;
    private final double scale;
    private final double shiftSlope;
    private final double scaleSlope;

    private SimilaritySlopes(SimilarityMap map, double s) {
        this.s = s;
        headSlope = map.head();
        powerSlope = map.power();
        shift = shift(map, s);
        scale = scale(map, s);
        shiftSlope = Slope.at(speed -> shift(map, speed), s);
        scaleSlope = Slope.at(speed -> scale(map, speed), s);
    }

    static SimilaritySlopes of(SimilarityMap map, double s) {
        return new SimilaritySlopes(map, s);
    }

    private static double shift(SimilarityMap map, double s) {
        return map.model().shaftWatts(0, s, map.testedBest());
    }

    private static double scale(SimilarityMap map, double s) {
        return map.model().shaftWatts(1, s, map.testedBest()) - shift(map, s);
    }

    void fill(CurveArrays arrays, CurveSlopes slopes, int count) {
        over(headSlope, s, arrays.flows(), slopes.headOverFlow(), count);
        over(powerSlope, s * s * scale, arrays.flows(), slopes.powerOverFlow(), count);
        heads(arrays, slopes, count);
        powers(arrays, slopes, count);
    }

    /** Fills a factor times the slope at Q/s; of a polynomial, the usual case, in a loop without a branch. */
    private void over(SmoothCurve curve, double factor, double[] q, double[] out, int count) {
        if (curve instanceof Polynomial formula && formula.degree() <= 4) {
            double c1 = factor * formula.coefficient(1);
            double c2 = 2 * factor * formula.coefficient(2) / s;
            double c3 = 3 * factor * formula.coefficient(3) / (s * s);
            double c4 = 4 * factor * formula.coefficient(4) / (s * s * s);
            for (int i = 0; i < count; i++) {
                out[i] = c1 + q[i] * (c2 + q[i] * (c3 + q[i] * c4));
            }
            return;
        }
        for (int i = 0; i < count; i++) {
            out[i] = factor * curve.slopeAt(q[i] / s);
        }
    }

    private void heads(CurveArrays arrays, CurveSlopes slopes, int count) {
        double[] q = arrays.flows();
        double[] h = arrays.heads();
        double[] overFlow = slopes.headOverFlow();
        double[] overSpeed = slopes.headOverSpeed();
        double inverse = 1 / s;
        for (int i = 0; i < count; i++) {
            overSpeed[i] = (2 * h[i] - q[i] * overFlow[i]) * inverse;
        }
    }

    private void powers(CurveArrays arrays, CurveSlopes slopes, int count) {
        double[] q = arrays.flows();
        double[] p = arrays.powers();
        double[] overFlow = slopes.powerOverFlow();
        double[] overSpeed = slopes.powerOverSpeed();
        double byAffinity = 3 / s + scaleSlope / scale;
        double inverse = 1 / s;
        for (int i = 0; i < count; i++) {
            overSpeed[i] = shiftSlope + byAffinity * (p[i] - shift) - q[i] * overFlow[i] * inverse;
        }
    }
}

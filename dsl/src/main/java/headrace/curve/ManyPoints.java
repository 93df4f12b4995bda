package headrace.curve;

import headrace.numeric.Polynomial;

/**
 * A similarity map of polynomials at many points, in blocks that stay in the nearest cache and in loops simple enough
 * for the compiler to work on several points at once.
 */
final class ManyPoints {
    private static final int BLOCK = 512;
    private static final int HIGHEST_DEGREE = 4;

    private final SimilarityMap map;
    private final double[] head;
    private final double[] power;
    private final double[] flows = new double[BLOCK];
    private final double[] speeds = new double[BLOCK];
    private final double[] homologous = new double[BLOCK];
    private final CurveArrays here = CurveArrays.of(flows, speeds);
    private final double[] metres = here.heads();
    private final double[] watts = here.powers();

    private ManyPoints(SimilarityMap map, Polynomial head, Polynomial power) {
        this.map = map;
        this.head = padded(head);
        this.power = padded(power);
    }

    /** Fills the values and returns true, or does nothing unless the curves are polynomials of degree 4 at most. */
    static boolean fill(SimilarityMap map, CurveArrays arrays, double ratio) {
        if (!isOfPolynomials(map)) {
            return false;
        }
        ManyPoints points = new ManyPoints(map, (Polynomial) map.head(), (Polynomial) map.power());
        for (int from = 0; from < arrays.count(); from += BLOCK) {
            points.block(arrays, ratio, from, Math.min(BLOCK, arrays.count() - from));
        }
        return true;
    }

    /** The same at one speed, where the model of efficiency, which is linear in power, is asked twice only. */
    static boolean fillAt(SimilarityMap map, double s, CurveArrays arrays, int count) {
        if (!isOfPolynomials(map)) {
            return false;
        }
        double shift = map.model().shaftWatts(0, s, map.testedBest());
        double[] head = ofActual((Polynomial) map.head(), 1, s);
        double[] power = ofActual((Polynomial) map.power(), s * map.powerGain(0, s) / (s * s * s), s);
        power[0] += shift;
        values(head, arrays.flows(), count, arrays.heads());
        values(power, arrays.flows(), count, arrays.powers());
        efficiencies(map.weight(), arrays, count);
        return true;
    }

    /** The heads alone, at flows and speeds that begin where their arrays do. */
    static boolean fillHeads(SimilarityMap map, CurveArrays arrays, double ratio, int count) {
        if (!(map.head() instanceof Polynomial head) || head.degree() > HIGHEST_DEGREE) {
            return false;
        }
        double[] c = padded(head);
        heads(c, ratio, arrays, count);
        return true;
    }

    private static void heads(double[] c, double ratio, CurveArrays arrays, int count) {
        double[] q = arrays.flows();
        double[] speed = arrays.speeds();
        double[] out = arrays.heads();
        double c0 = c[0];
        double c1 = c[1];
        double c2 = c[2];
        double c3 = c[3];
        double c4 = c[4];
        for (int i = 0; i < count; i++) {
            double s = speed[i] * ratio;
            double x = q[i] / s;
            out[i] = s * s * (c0 + x * (c1 + x * (c2 + x * (c3 + x * c4))));
        }
    }

    /** Turns c of {@code factor·s²·c(q/s)} into the coefficients of q. */
    private static double[] ofActual(Polynomial curve, double factor, double s) {
        double[] coefficients = padded(curve);
        double power = factor * s * s;
        for (int i = 0; i < coefficients.length; i++) {
            coefficients[i] *= power;
            power /= s;
        }
        return coefficients;
    }

    private static void values(double[] c, double[] q, int count, double[] out) {
        double c0 = c[0];
        double c1 = c[1];
        double c2 = c[2];
        double c3 = c[3];
        double c4 = c[4];
        for (int i = 0; i < count; i++) {
            out[i] = c0 + q[i] * (c1 + q[i] * (c2 + q[i] * (c3 + q[i] * c4)));
        }
    }

    private static void efficiencies(double weight, CurveArrays arrays, int count) {
        double[] q = arrays.flows();
        double[] h = arrays.heads();
        double[] p = arrays.powers();
        double[] out = arrays.efficiencies();
        for (int i = 0; i < count; i++) {
            out[i] = weight * q[i] * h[i] / p[i];
        }
    }

    private static boolean isOfPolynomials(SimilarityMap map) {
        return map.head() instanceof Polynomial
                && map.power() instanceof Polynomial
                && Math.max(map.head().degree(), map.power().degree()) <= HIGHEST_DEGREE;
    }

    private static double[] padded(Polynomial curve) {
        double[] coefficients = new double[HIGHEST_DEGREE + 1];
        for (int i = 0; i < coefficients.length; i++) {
            coefficients[i] = curve.coefficient(i);
        }
        return coefficients;
    }

    /** Copies in and out, because only loops with one and the same index for all arrays are fast. */
    private void block(CurveArrays arrays, double ratio, int from, int count) {
        System.arraycopy(arrays.flows(), from, flows, 0, count);
        System.arraycopy(arrays.speeds(), from, speeds, 0, count);
        for (int i = 0; ratio != 1 && i < count; i++) {
            speeds[i] *= ratio;
        }
        divide(flows, speeds, count, homologous);
        values(head, homologous, count, metres);
        values(power, homologous, count, watts);
        scale(speeds, count, metres, watts);
        map.model().replaceAffinity(watts, speeds, count, map.testedBest());
        efficiencies(map.weight(), here, count);
        System.arraycopy(metres, 0, arrays.heads(), from, count);
        System.arraycopy(watts, 0, arrays.powers(), from, count);
        System.arraycopy(here.efficiencies(), 0, arrays.efficiencies(), from, count);
    }

    private static void divide(double[] q, double[] s, int count, double[] out) {
        for (int i = 0; i < count; i++) {
            out[i] = q[i] / s[i];
        }
    }

    private static void scale(double[] s, int count, double[] metres, double[] watts) {
        for (int i = 0; i < count; i++) {
            metres[i] *= s[i] * s[i];
        }
        for (int i = 0; i < count; i++) {
            watts[i] *= s[i] * s[i] * s[i];
        }
    }
}

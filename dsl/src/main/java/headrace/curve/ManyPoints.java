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
    private final double[] metres = new double[BLOCK];
    private final double[] watts = new double[BLOCK];
    private final double[] efficiencies = new double[BLOCK];

    private ManyPoints(SimilarityMap map, Polynomial head, Polynomial power) {
        this.map = map;
        this.head = padded(head);
        this.power = padded(power);
    }

    /** Fills the values and returns true, or does nothing unless the curves are polynomials of degree 4 at most. */
    static boolean fill(SimilarityMap map, CurveArrays arrays, double ratio) {
        if (!(map.head() instanceof Polynomial head
                && map.power() instanceof Polynomial power
                && Math.max(head.degree(), power.degree()) <= HIGHEST_DEGREE)) {
            return false;
        }
        ManyPoints points = new ManyPoints(map, head, power);
        for (int from = 0; from < arrays.count(); from += BLOCK) {
            points.block(arrays, ratio, from, Math.min(BLOCK, arrays.count() - from));
        }
        return true;
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
        homologous(head, flows, speeds, count, metres);
        homologous(power, flows, speeds, count, watts);
        scale(speeds, count, metres, watts);
        map.model().replaceAffinity(watts, speeds, count, map.testedBest());
        efficiencies(count);
        System.arraycopy(metres, 0, arrays.heads(), from, count);
        System.arraycopy(watts, 0, arrays.powers(), from, count);
        System.arraycopy(efficiencies, 0, arrays.efficiencies(), from, count);
    }

    private static void homologous(double[] c, double[] q, double[] s, int count, double[] out) {
        double c0 = c[0];
        double c1 = c[1];
        double c2 = c[2];
        double c3 = c[3];
        double c4 = c[4];
        for (int i = 0; i < count; i++) {
            double x = q[i] / s[i];
            out[i] = c0 + x * (c1 + x * (c2 + x * (c3 + x * c4)));
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

    private void efficiencies(int count) {
        double[] q = flows;
        double[] h = metres;
        double[] p = watts;
        double[] out = efficiencies;
        double weight = map.weight();
        for (int i = 0; i < count; i++) {
            out[i] = weight * q[i] * h[i] / p[i];
        }
    }
}

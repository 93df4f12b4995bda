package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.numeric.Polynomial;

/**
 * The speeds at which a head of degree 3 or 4 delivers many duties, found side by side in blocks that stay in the
 * nearest cache.
 *
 * <p>A duty at Q and H is met at the flow x of the test at which the curve meets the parabola H/Q²·x². Newton's method
 * goes the same few steps for all duties of a block. A duty whose last step was more than small, or that is met at an
 * end of the range or outside, is solved again by itself, inside its bracket.
 */
final class ManyMeetings {
    private static final int BLOCK = 512;
    private static final int HIGHEST_DEGREE = 4;
    private static final int STEPS = 4;

    /** Newton's method squares the share of an error: behind a step of this share there is only rounding. */
    private static final double SMALL = 1e-8;

    private final Range range;
    private final double[] c = new double[HIGHEST_DEGREE + 1];
    private final double fall;
    private final double[] q = new double[BLOCK];
    private final double[] x = new double[BLOCK];
    private final double[] shares = new double[BLOCK];
    private final double[] parabolas = new double[BLOCK];
    private final double[] steps = new double[BLOCK];

    private ManyMeetings(Polynomial head, Range range) {
        this.range = range;
        for (int i = 0; i < c.length; i++) {
            c[i] = head.coefficient(i);
        }
        fall = (c[0] - head.valueAt(range.high())) / (range.high() * range.high());
    }

    /** Fills the speeds and returns true, or does nothing unless the head is a polynomial of degree 4 at most. */
    static boolean fill(SimilarityMap map, Range range, double[] flows, double[] heads, double[] ratios) {
        if (!(map.head() instanceof Polynomial head && head.degree() <= HIGHEST_DEGREE)) {
            return false;
        }
        ManyMeetings meetings = new ManyMeetings(head, range);
        for (int from = 0; from < flows.length; from += BLOCK) {
            int count = Math.min(BLOCK, flows.length - from);
            meetings.start(flows, heads, from, count);
            for (int step = 0; step < STEPS; step++) {
                meetings.step(count);
            }
            meetings.finish(map, flows, heads, from, count, ratios);
        }
        return true;
    }

    /** Starts on a parabola through both ends of the curve. Only loops with one index for all arrays are fast. */
    private void start(double[] flows, double[] heads, int from, int count) {
        System.arraycopy(flows, from, q, 0, count);
        System.arraycopy(heads, from, parabolas, 0, count);
        double[] k = parabolas;
        double top = c[0];
        double least = fall;
        for (int i = 0; i < count; i++) {
            k[i] /= q[i] * q[i];
        }
        for (int i = 0; i < count; i++) {
            x[i] = Math.sqrt(top / (k[i] + least));
        }
    }

    private void step(int count) {
        double c0 = c[0];
        double c1 = c[1];
        double c2 = c[2];
        double c3 = c[3];
        double c4 = c[4];
        for (int i = 0; i < count; i++) {
            double bend = c2 - parabolas[i];
            double value = c0 + x[i] * (c1 + x[i] * (bend + x[i] * (c3 + x[i] * c4)));
            double slope = c1 + x[i] * (2 * bend + x[i] * (3 * c3 + x[i] * (4 * c4)));
            steps[i] = value / slope;
        }
        for (int i = 0; i < count; i++) {
            x[i] -= steps[i];
        }
    }

    private void finish(SimilarityMap map, double[] flows, double[] heads, int from, int count, double[] ratios) {
        for (int i = 0; i < count; i++) {
            shares[i] = q[i] / x[i];
        }
        System.arraycopy(shares, 0, ratios, from, count);
        for (int i = 0; i < count; i++) {
            boolean met = Math.abs(steps[i]) <= SMALL * x[i] && x[i] > range.low() && x[i] < range.high();
            if (!met) {
                ratios[from + i] = map.speedRatio(flows[from + i], heads[from + i], range);
            }
        }
    }
}

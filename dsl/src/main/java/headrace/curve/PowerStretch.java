package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.numeric.Polynomial;
import headrace.numeric.Roots;
import headrace.numeric.SmoothCurve;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A stretch of a curve over which the shaft power only rises or only falls with flow, so that a power has one flow on
 * it, at every speed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows in m³/s, powers in W, speeds as shares of that of the curve.
 *   <dt>Limits
 *   <dd>The range of the curve, extended or not. Where viscosity is corrected the power may turn at another homologous
 *       flow at another speed; the stretch is then that of the curve's own speed.
 *   <dt>Errors
 *   <dd>None: a power beyond the stretch gives an infinite flow, minus where it is too small, plus where it is too
 *       great.
 *   <dt>Source
 *   <dd>The formula for the roots of a quadratic in the arrangement that subtracts no nearly equal numbers.
 * </dl>
 */
public final class PowerStretch {
    private static final int BLOCK = 512;

    /** A power that misses an end by this share of it is at the end. */
    private static final double ROUNDING = 1e-12;

    private final MapAtSpeed seen;
    private final double from;
    private final double to;
    private final boolean rising;

    private PowerStretch(MapAtSpeed seen, double from, double to) {
        this.seen = seen;
        this.from = from;
        this.to = to;
        this.rising = watts(to, seen.ratio()) >= watts(from, seen.ratio());
    }

    static List<PowerStretch> of(MapAtSpeed seen) {
        double[] stops = seen.map().powerStops(seen.ratio(), seen.range());
        List<PowerStretch> all = new ArrayList<>();
        for (int i = 1; i < stops.length; i++) {
            all.add(new PowerStretch(
                    seen,
                    seen.map().homologous(stops[i - 1], seen.ratio()),
                    seen.map().homologous(stops[i], seen.ratio())));
        }
        return all;
    }

    private double watts(double homologous, double s) {
        return seen.map().shaftWatts(seen.map().actual(homologous, s), s);
    }

    /** Returns whether the shaft power rises with flow. */
    public boolean rising() {
        return rising;
    }

    /** Returns the flow at which the stretch begins at a share of the curve's speed. */
    public double fromAt(double s) {
        return seen.map().actual(from, s * seen.ratio());
    }

    /** Returns the flow at which the stretch ends at a share of the curve's speed. */
    public double toAt(double s) {
        return seen.map().actual(to, s * seen.ratio());
    }

    /**
     * Fills the flows for many shaft powers and speeds; an infinite one where a power is not on the stretch.
     *
     * @param watts the shaft powers
     * @param speeds the speed of each, above 0
     * @param flows to be filled; may be the array of the powers
     * @param count how many
     */
    public void fillFlows(double[] watts, double[] speeds, double[] flows, int count) {
        if (seen.map() instanceof SimilarityMap map && map.model().scales()) {
            new Similar(map).fill(watts, speeds, flows, count);
            return;
        }
        for (int i = 0; i < count; i++) {
            flows[i] = flowAt(watts[i], speeds[i]);
        }
    }

    /** Returns the flow of a shaft power at a share of the curve's speed, infinite where it is not on the stretch. */
    public double flowAt(double watts, double s) {
        double speed = s * seen.ratio();
        double atFrom = watts(from, speed);
        double atTo = watts(to, speed);
        double outside = outside(watts, Math.min(atFrom, atTo), Math.max(atFrom, atTo));
        if (outside != 0) {
            return outside;
        }
        double low = seen.map().actual(from, speed);
        double high = seen.map().actual(to, speed);
        if (!((atFrom - watts) * (atTo - watts) < 0)) {
            return Math.abs(atFrom - watts) <= Math.abs(atTo - watts) ? low : high;
        }
        return Roots.between(q -> seen.map().shaftWatts(q, speed) - watts, low, high);
    }

    private static double outside(double value, double least, double greatest) {
        double nothing = ROUNDING * Math.abs(greatest);
        if (value >= least - nothing && value <= greatest + nothing) {
            return 0;
        }
        return value > greatest ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    }

    /**
     * The same where one curve of power serves all speeds: powers are brought to the speed of the test, in loops
     * without a branch, and looked up there.
     */
    private final class Similar {
        private final SimilarityMap map;
        private final SmoothCurve power;
        private final double least;
        private final double greatest;
        private final double[] speed = new double[BLOCK];
        private final double[] scale = new double[BLOCK];
        private final double[] value = new double[BLOCK];
        private final double[] flow = new double[BLOCK];

        Similar(SimilarityMap map) {
            this.map = map;
            this.power = map.power();
            least = Math.min(power.valueAt(from), power.valueAt(to));
            greatest = Math.max(power.valueAt(from), power.valueAt(to));
        }

        void fill(double[] watts, double[] speeds, double[] flows, int count) {
            for (int start = 0; start < count; start += BLOCK) {
                int here = Math.min(BLOCK, count - start);
                System.arraycopy(watts, start, value, 0, here);
                System.arraycopy(speeds, start, speed, 0, here);
                toTestedSpeed(here);
                if (power instanceof Polynomial formula && formula.degree() <= 2) {
                    quadratic(formula, here);
                } else {
                    singly(here);
                }
                markOutside(here);
                System.arraycopy(flow, 0, flows, start, here);
            }
        }

        /** Turns shaft powers into those of the same homologous flow at the tested speed. */
        private void toTestedSpeed(int count) {
            double ratio = seen.ratio();
            for (int i = 0; i < count; i++) {
                speed[i] *= ratio;
                scale[i] = speed[i] * speed[i] * speed[i];
            }
            map.model().replaceAffinity(scale, speed, count, map.testedBest());
            for (int i = 0; i < count; i++) {
                value[i] = value[i] / scale[i];
            }
        }

        private void quadratic(Polynomial formula, int count) {
            double a = formula.coefficient(2);
            double b = formula.coefficient(1);
            double c = formula.coefficient(0);
            double sign = rising ? 1 : -1;
            if (b * sign > 0) {
                for (int i = 0; i < count; i++) {
                    double rest = value[i] - c;
                    double root = sign * Math.sqrt(Math.max(0, b * b + 4 * a * rest));
                    flow[i] = speed[i] * (2 * rest / (b + root));
                }
                return;
            }
            for (int i = 0; i < count; i++) {
                double root = sign * Math.sqrt(Math.max(0, b * b + 4 * a * (value[i] - c)));
                flow[i] = speed[i] * ((root - b) / (2 * a));
            }
        }

        private void singly(int count) {
            for (int i = 0; i < count; i++) {
                double[] found = power.argumentsOf(value[i], from, to);
                boolean first = Math.abs(power.valueAt(from) - value[i]) <= Math.abs(power.valueAt(to) - value[i]);
                flow[i] = speed[i] * Arrays.stream(found).findFirst().orElse(first ? from : to);
            }
        }

        private void markOutside(int count) {
            double nothing = ROUNDING * Math.abs(greatest);
            for (int i = 0; i < count; i++) {
                if (!(value[i] >= least - nothing)) {
                    flow[i] = Double.NEGATIVE_INFINITY;
                } else if (!(value[i] <= greatest + nothing)) {
                    flow[i] = Double.POSITIVE_INFINITY;
                }
            }
        }
    }

    /** Returns the stretch with the flows at the curve's own speed, in m³/s. */
    @Override
    public String toString() {
        Range range = new Range(from, to);
        return (rising ? "rising" : "falling") + " over " + seen.flows(range, 1);
    }
}

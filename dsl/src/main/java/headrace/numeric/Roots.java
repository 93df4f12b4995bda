package headrace.numeric;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.hipparchus.analysis.solvers.BrentSolver;

/** Roots of functions of one variable, always inside a bracket. */
public final class Roots {
    private static final double RELATIVE = 1e-15;
    private static final double SMALLEST = 1e-300;
    private static final int MOST_STEPS = 1000;
    private static final int PANELS = 128;
    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);

    /** A value changes with the square of the distance from where it turns: half the digits are all there are. */
    private static final double TURNING = 1e-9;

    private Roots() {}

    /**
     * Returns the root between two arguments at which the function has opposite signs, or is 0, by Brent's method, to
     * rounding.
     *
     * @throws IllegalArgumentException if the signs are the same: the caller has to look first
     */
    public static double between(DoubleUnaryOperator function, double low, double high) {
        double atLow = function.applyAsDouble(low);
        double atHigh = function.applyAsDouble(high);
        if (atLow == 0) {
            return low;
        }
        if (atHigh == 0) {
            return high;
        }
        if (!(atLow < 0 && atHigh > 0 || atLow > 0 && atHigh < 0)) {
            throw new IllegalArgumentException(
                    "No change of sign from " + atLow + " at " + low + " to " + atHigh + " at " + high);
        }
        BrentSolver solver = new BrentSolver(RELATIVE, SMALLEST, SMALLEST);
        return solver.solve(MOST_STEPS, function::applyAsDouble, low, high);
    }

    /**
     * Returns the ends of a range, those of its 128 equal parts, and where a smooth function turns between them, in
     * increasing order.
     */
    public static double[] stopsIn(DoubleUnaryOperator function, double low, double high) {
        double step = (high - low) / PANELS;
        DoubleStream.Builder stops = DoubleStream.builder();
        for (int i = 0; i <= PANELS; i++) {
            double at = i == PANELS ? high : low + i * step;
            stops.add(at);
            double here = function.applyAsDouble(at);
            double before = function.applyAsDouble(at - step);
            double after = function.applyAsDouble(at + step);
            if (i > 0 && i < PANELS && (here - before) * (after - here) <= 0) {
                stops.add(turning(function, at - step, at + step, here >= before ? 1 : -1));
            }
        }
        return stops.build().sorted().distinct().toArray();
    }

    /** Returns the ends of a range and where a smooth function turns between them, in increasing order. */
    public static double[] turnsIn(DoubleUnaryOperator function, double low, double high) {
        double[] stops = stopsIn(function, low, high);
        DoubleStream.Builder turns = DoubleStream.builder();
        for (int i = 0; i < stops.length; i++) {
            if (i == 0 || i == stops.length - 1) {
                turns.add(stops[i]);
                continue;
            }
            double here = function.applyAsDouble(stops[i]);
            double before = here - function.applyAsDouble(stops[i - 1]);
            double after = function.applyAsDouble(stops[i + 1]) - here;
            if (before * after < 0) {
                turns.add(stops[i]);
            }
        }
        return turns.build().toArray();
    }

    private static double turning(DoubleUnaryOperator function, double low, double high, int sign) {
        double a = low;
        double b = high;
        while (b - a > TURNING * (high - low)) {
            double left = b - GOLDEN * (b - a);
            double right = a + GOLDEN * (b - a);
            if (sign * function.applyAsDouble(left) < sign * function.applyAsDouble(right)) {
                a = left;
            } else {
                b = right;
            }
        }
        return 0.5 * (a + b);
    }
}

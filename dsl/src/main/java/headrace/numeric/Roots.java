package headrace.numeric;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;

/** Roots of functions of one variable, always inside a bracket. */
public final class Roots {
    private static final double RELATIVE = 1e-15;
    private static final double SMALLEST = 1e-300;
    private static final int MOST_STEPS = 1000;

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
}

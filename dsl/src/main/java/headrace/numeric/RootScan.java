package headrace.numeric;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** All roots of a smooth function over a range: scanned for, then found inside their brackets. */
public final class RootScan {
    private static final int INTERVALS = 512;
    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);
    private static final double ROUNDING = 1e-12;

    private RootScan() {}

    /**
     * Returns the roots in increasing order.
     *
     * <p>Looked for on a grid of 512 intervals; where the function comes near 0 between grid points without a change of
     * sign, its nearest point is sought too, so that two roots close together are not missed. More than two roots
     * within two intervals may be.
     *
     * @param function finite over the whole range
     */
    public static double[] between(DoubleUnaryOperator function, double low, double high) {
        double[] x = new double[INTERVALS + 1];
        double[] y = new double[INTERVALS + 1];
        double size = 0;
        for (int i = 0; i <= INTERVALS; i++) {
            x[i] = i == INTERVALS ? high : low + (high - low) * i / INTERVALS;
            y[i] = function.applyAsDouble(x[i]);
            size = Math.max(size, Math.abs(y[i]));
        }
        List<Double> roots = new ArrayList<>();
        for (int i = 0; i <= INTERVALS; i++) {
            if (Math.abs(y[i]) <= ROUNDING * size) {
                roots.add(x[i]);
                y[i] = 0;
            } else if (i > 0 && y[i] * y[i - 1] < 0) {
                roots.add(Roots.between(function, x[i - 1], x[i]));
            } else if (i > 1 && turnsTowardsZero(y[i - 2], y[i - 1], y[i])) {
                addNearest(function, new double[] {x[i - 2], x[i]}, Math.signum(y[i]) * size, roots);
            }
        }
        return roots.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    private static boolean turnsTowardsZero(double before, double here, double after) {
        double sign = Math.signum(here);
        boolean same = sign != 0 && before * sign > 0 && after * sign > 0;
        return same && here * sign < before * sign && here * sign <= after * sign;
    }

    /**
     * Seeks the point nearest 0 by golden section: beyond 0 it lies between two roots, at 0 it is a root itself.
     *
     * @param size the size of the function, with the sign that it has at both ends
     */
    private static void addNearest(DoubleUnaryOperator function, double[] ends, double size, List<Double> roots) {
        double sign = Math.signum(size);
        double a = ends[0];
        double b = ends[1];
        while (b - a > ROUNDING * (Math.abs(ends[0]) + Math.abs(ends[1]))) {
            double left = b - GOLDEN * (b - a);
            double right = a + GOLDEN * (b - a);
            if (sign * function.applyAsDouble(left) < sign * function.applyAsDouble(right)) {
                b = right;
            } else {
                a = left;
            }
        }
        double nearest = 0.5 * (a + b);
        double value = function.applyAsDouble(nearest);
        if (Math.abs(value) <= ROUNDING * Math.abs(size)) {
            roots.add(nearest);
        } else if (sign * value < 0) {
            roots.add(Roots.between(function, ends[0], nearest));
            roots.add(Roots.between(function, nearest, ends[1]));
        }
    }
}

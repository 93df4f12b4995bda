package headrace.numeric;

import headrace.work.Work;
import java.util.Arrays;

/**
 * A level, and a straight rise or fall on one side of a point: the three-parameter change-point model.
 *
 * <p>{@code y = base + slope·max(0, x − point)} with the slope on the right, or {@code base + slope·max(0, point − x)}
 * with it on the left; the side and the point with the least sum of squares win. The point is searched among forty
 * quantiles of x and then between its neighbours.
 *
 * <p>Source: the three-parameter models of ASHRAE Guideline 14.
 *
 * @param right whether the slope lies on the right
 * @param point where it begins
 * @param base the value on the level side
 * @param slope the change of y for each 1 of x away from the point
 * @param squares the sum of squared residuals
 */
public record ChangePoint(boolean right, double point, double base, double slope, double squares) {
    /** The number of parameters that are fitted. */
    public static final int PARAMETERS = 3;

    private static final int STARTS = 40;
    private static final int STEPS = 30;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    /**
     * Returns the nearest such line.
     *
     * @param x at least 4 values, not all equal
     * @param y as many values
     */
    public static ChangePoint of(double[] x, double[] y) {
        ChangePoint left = best(x, y, false);
        ChangePoint right = best(x, y, true);
        return right.squares < left.squares ? right : left;
    }

    private static ChangePoint best(double[] x, double[] y, boolean right) {
        double[] sorted = x.clone();
        Arrays.sort(sorted);
        ChangePoint best = null;
        int at = 0;
        for (int i = 0; i <= STARTS; i++) {
            ChangePoint here = with(x, y, right, start(sorted, i));
            if (best == null || here.squares < best.squares) {
                best = here;
                at = i;
            }
        }
        return refined(x, y, best, start(sorted, Math.max(0, at - 1)), start(sorted, Math.min(STARTS, at + 1)));
    }

    private static double start(double[] sorted, int i) {
        return sorted[(int) ((sorted.length - 1.0) * i / STARTS)];
    }

    /** Narrows the point by golden section. */
    private static ChangePoint refined(double[] x, double[] y, ChangePoint start, double from, double to) {
        ChangePoint best = start;
        double low = from;
        double high = to;
        for (int i = 0; i < STEPS; i++) {
            ChangePoint one = with(x, y, start.right, high - GOLDEN * (high - low));
            ChangePoint other = with(x, y, start.right, low + GOLDEN * (high - low));
            if (one.squares < other.squares) {
                high = other.point;
            } else {
                low = one.point;
            }
            ChangePoint nearer = one.squares < other.squares ? one : other;
            best = nearer.squares < best.squares ? nearer : best;
        }
        return best;
    }

    /** Returns the nearest such line with its point given. */
    private static ChangePoint with(double[] x, double[] y, boolean right, double point) {
        Work.poll();
        int n = x.length;
        double sumZ = 0;
        double sumY = 0;
        for (int i = 0; i < n; i++) {
            sumZ += beyond(x[i], point, right);
            sumY += y[i];
        }
        double zz = 0;
        double zy = 0;
        double yy = 0;
        for (int i = 0; i < n; i++) {
            double dz = beyond(x[i], point, right) - sumZ / n;
            double dy = y[i] - sumY / n;
            zz += dz * dz;
            zy += dz * dy;
            yy += dy * dy;
        }
        double slope = zz > 0 ? zy / zz : 0;
        return new ChangePoint(right, point, sumY / n - slope * sumZ / n, slope, Math.max(0, yy - slope * zy));
    }

    private static double beyond(double x, double point, boolean right) {
        return Math.max(0, right ? x - point : point - x);
    }

    /** Returns the value at x. */
    public double at(double x) {
        return base + slope * beyond(x, point, right);
    }
}

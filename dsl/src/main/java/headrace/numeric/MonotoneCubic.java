package headrace.numeric;

import java.util.Arrays;

/**
 * The piecewise cubic through given points that rises and falls only where they do.
 *
 * <p>For tables without scatter, such as values read off a printed curve: it passes through every point and adds no
 * waves of its own. Beyond the first and the last point it goes on straight.
 *
 * <p>Source: Fritsch and Carlson, SIAM Journal on Numerical Analysis 17 (1980), with the circle of radius 3.
 */
public final class MonotoneCubic implements SmoothCurve {
    private static final double CIRCLE = 3;

    private final double[] x;
    private final double[] y;
    private final double[] slopes;

    private MonotoneCubic(double[] x, double[] y, double[] slopes) {
        this.x = x;
        this.y = y;
        this.slopes = slopes;
    }

    /** Returns the curve through points whose arguments increase strictly; two at least. */
    public static MonotoneCubic through(double[] x, double[] y) {
        int n = x.length;
        double[] secants = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            secants[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }
        double[] slopes = new double[n];
        slopes[0] = secants[0];
        slopes[n - 1] = secants[n - 2];
        for (int i = 1; i < n - 1; i++) {
            boolean turns = secants[i - 1] * secants[i] <= 0;
            slopes[i] = turns ? 0 : 0.5 * (secants[i - 1] + secants[i]);
        }
        for (int i = 0; i < n - 1; i++) {
            limit(slopes, i, secants[i]);
        }
        return new MonotoneCubic(x.clone(), y.clone(), slopes);
    }

    private static void limit(double[] slopes, int i, double secant) {
        if (secant == 0) {
            slopes[i] = 0;
            slopes[i + 1] = 0;
            return;
        }
        double size = Math.hypot(slopes[i] / secant, slopes[i + 1] / secant);
        if (size > CIRCLE) {
            slopes[i] *= CIRCLE / size;
            slopes[i + 1] *= CIRCLE / size;
        }
    }

    /** Returns the interval that holds an argument: 0 before the first point, the number of points beyond the last. */
    private int interval(double at) {
        int i = 0;
        while (i < x.length && x[i] <= at) {
            i++;
        }
        return i;
    }

    @Override
    public double valueAt(double at) {
        int i = interval(at);
        if (i == 0 || at >= x[x.length - 1]) {
            int end = i == 0 ? 0 : x.length - 1;
            return y[end] + slopes[end] * (at - x[end]);
        }
        double h = x[i] - x[i - 1];
        double t = (at - x[i - 1]) / h;
        double fromLeft = y[i - 1] + t * h * slopes[i - 1];
        double secant = (y[i] - y[i - 1]) / h;
        double bend = 3 * secant - 2 * slopes[i - 1] - slopes[i];
        double twist = slopes[i - 1] + slopes[i] - 2 * secant;
        return fromLeft + h * t * t * (bend + twist * t);
    }

    @Override
    public double slopeAt(double at) {
        int i = interval(at);
        if (i == 0 || at >= x[x.length - 1]) {
            return slopes[i == 0 ? 0 : x.length - 1];
        }
        double h = x[i] - x[i - 1];
        double t = (at - x[i - 1]) / h;
        double secant = (y[i] - y[i - 1]) / h;
        double bend = 3 * secant - 2 * slopes[i - 1] - slopes[i];
        double twist = slopes[i - 1] + slopes[i] - 2 * secant;
        return slopes[i - 1] + t * (2 * bend + 3 * twist * t);
    }

    @Override
    public int degree() {
        return 3;
    }

    @Override
    public double[] breaksIn(double low, double high) {
        return Arrays.stream(x).filter(at -> at > low && at < high).toArray();
    }

    @Override
    public Polynomial pieceAt(double at) {
        int i = interval(at);
        if (i == 0 || at >= x[x.length - 1]) {
            int end = i == 0 ? 0 : x.length - 1;
            return Polynomial.of(y[end], slopes[end]).shiftedBy(x[end]);
        }
        double h = x[i] - x[i - 1];
        double secant = (y[i] - y[i - 1]) / h;
        double bend = (3 * secant - 2 * slopes[i - 1] - slopes[i]) / h;
        double twist = (slopes[i - 1] + slopes[i] - 2 * secant) / (h * h);
        return Polynomial.of(y[i - 1], slopes[i - 1], bend, twist).shiftedBy(x[i - 1]);
    }

    @Override
    public MonotoneCubic times(double factor) {
        return new MonotoneCubic(x, scaled(y, factor), scaled(slopes, factor));
    }

    @Override
    public MonotoneCubic ofScaled(double factor) {
        return new MonotoneCubic(scaled(x, 1 / factor), y, scaled(slopes, factor));
    }

    private static double[] scaled(double[] values, double factor) {
        return Arrays.stream(values).map(v -> v * factor).toArray();
    }
}

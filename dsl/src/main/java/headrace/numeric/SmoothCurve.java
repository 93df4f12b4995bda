package headrace.numeric;

import java.util.Arrays;
import java.util.function.UnaryOperator;

/**
 * A function of one variable that is made of polynomials, one after the other, and has no jump and no kink.
 *
 * <p>Evaluation allocates nothing.
 */
public sealed interface SmoothCurve permits Polynomial, MonotoneCubic {
    /** Returns the value at x. */
    double valueAt(double x);

    /** Returns the slope at x. */
    double slopeAt(double x);

    /** Returns the highest power. */
    int degree();

    /**
     * Returns the arguments between {@code low} and {@code high}, both excluded, at which one polynomial follows
     * another.
     */
    double[] breaksIn(double low, double high);

    /** Returns the polynomial that holds at x; of the two that meet at a break, the one after it. */
    Polynomial pieceAt(double x);

    /** Returns the curve whose value is so many times this one's. */
    SmoothCurve times(double factor);

    /** Returns the curve whose value at x is this one's at {@code factor·x}; the factor is above 0. */
    SmoothCurve ofScaled(double factor);

    /**
     * Returns every argument from {@code low} to {@code high} at which the curve has a value, increasing, each once.
     */
    default double[] argumentsOf(double value, double low, double high) {
        return gathered(low, high, piece -> piece.plus(Polynomial.of(-value)));
    }

    /** Returns every argument from {@code low} to {@code high} at which the slope is 0, increasing, each once. */
    default double[] stationaryIn(double low, double high) {
        return gathered(low, high, Polynomial::derivative);
    }

    private double[] gathered(double low, double high, UnaryOperator<Polynomial> made) {
        double[] stops = stops(low, high, breaksIn(low, high));
        double[] all = new double[0];
        for (int i = 1; i < stops.length; i++) {
            Polynomial piece = made.apply(pieceAt(0.5 * (stops[i - 1] + stops[i])));
            double[] roots = piece.rootsIn(stops[i - 1], stops[i]);
            int known = all.length;
            all = Arrays.copyOf(all, known + roots.length);
            System.arraycopy(roots, 0, all, known, roots.length);
        }
        return Arrays.stream(all).distinct().toArray();
    }

    /** Returns {@code low}, the breaks, and {@code high}, in increasing order, each once. */
    static double[] stops(double low, double high, double... breaks) {
        double[] stops = Arrays.copyOf(breaks, breaks.length + 2);
        stops[breaks.length] = low;
        stops[breaks.length + 1] = high;
        return Arrays.stream(stops).sorted().distinct().toArray();
    }
}

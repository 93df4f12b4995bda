package headrace.estimate;

import headrace.numeric.Roots;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** A smooth function over a range, cut where it turns, so that each piece meets a value once at most. */
final class Pieces {
    /** A value that misses an end by this share of the size of the function is at the end. */
    private static final double ROUNDING = 1e-12;

    private final DoubleUnaryOperator function;
    private final double[] at;
    private final double[] values;

    private Pieces(DoubleUnaryOperator function, double[] stops) {
        this.function = function;
        this.at = stops;
        this.values = Arrays.stream(stops).map(function).toArray();
    }

    static Pieces of(DoubleUnaryOperator function, double low, double high) {
        return new Pieces(function, low < high ? Roots.stopsIn(function, low, high) : new double[] {low});
    }

    double least() {
        return value(false);
    }

    double greatest() {
        return value(true);
    }

    private double value(boolean greatest) {
        return values[place(greatest)];
    }

    /** Returns where the function is least or greatest. */
    double where(boolean greatest) {
        return at[place(greatest)];
    }

    private int place(boolean greatest) {
        int found = 0;
        for (int i = 1; i < values.length; i++) {
            boolean better = greatest ? values[i] > values[found] : values[i] < values[found];
            found = better ? i : found;
        }
        return found;
    }

    /** Returns where the function has a value, increasing, each once. */
    List<Double> rootsOf(double value) {
        double nothing = ROUNDING * Math.max(Math.abs(least()), Math.abs(greatest()));
        List<Double> roots = new ArrayList<>();
        for (int i = 0; i < at.length; i++) {
            double here = values[i] - value;
            if (Math.abs(here) <= nothing) {
                roots.add(at[i]);
            } else if (i > 0 && Math.abs(values[i - 1] - value) > nothing && here * (values[i - 1] - value) < 0) {
                roots.add(Roots.between(x -> function.applyAsDouble(x) - value, at[i - 1], at[i]));
            }
        }
        return roots;
    }

    /** Returns the ends of the stretch around a place over which the function only rises or only falls. */
    double[] around(double place) {
        int i = 1;
        while (i < at.length - 1 && at[i] < place) {
            i++;
        }
        if (at.length < 2) {
            return new double[] {at[0], at[0]};
        }
        int from = i - 1;
        int to = i;
        boolean rising = values[to] > values[from];
        while (from > 0 && values[from] > values[from - 1] == rising) {
            from--;
        }
        while (to < at.length - 1 && values[to + 1] > values[to] == rising) {
            to++;
        }
        return new double[] {at[from], at[to]};
    }
}

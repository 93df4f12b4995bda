package headrace.numeric;

import java.util.function.DoubleBinaryOperator;

/**
 * A line of equal value in a field.
 *
 * <p>A closed contour returns from its last point to its first, which is not repeated. An open one ends where the field
 * ends, and must not be joined.
 */
public final class Contour {
    private final double level;
    private final boolean closed;
    private final double[] x;
    private final double[] y;

    Contour(double level, boolean closed, double[] x, double[] y) {
        this.level = level;
        this.closed = closed;
        this.x = x;
        this.y = y;
    }

    /** Returns the value along the contour. */
    public double level() {
        return level;
    }

    /** Returns whether the contour comes back to its first point. */
    public boolean closed() {
        return closed;
    }

    /** Returns how many points it has, at least 2. */
    public int size() {
        return x.length;
    }

    /** Returns where a point stands across. */
    public double x(int index) {
        return x[index];
    }

    /** Returns where a point stands up. */
    public double y(int index) {
        return y[index];
    }

    /** Returns the contour in other coordinates, as from flow and speed to flow and head. */
    public Contour moved(DoubleBinaryOperator newX, DoubleBinaryOperator newY) {
        double[] movedX = new double[x.length];
        double[] movedY = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            movedX[i] = newX.applyAsDouble(x[i], y[i]);
            movedY[i] = newY.applyAsDouble(x[i], y[i]);
        }
        return new Contour(level, closed, movedX, movedY);
    }

    /** Returns the length from the first point to the last, and back to the first of a closed contour. */
    public double length() {
        double length = 0;
        for (int i = 1; i < x.length; i++) {
            length += Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
        return closed ? length + Math.hypot(x[0] - x[x.length - 1], y[0] - y[y.length - 1]) : length;
    }
}

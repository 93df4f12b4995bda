package headrace.numeric;

import java.util.Arrays;

/** A polynomial with real coefficients: {@code c₀ + c₁·x + c₂·x² + …}. */
public final class Polynomial implements SmoothCurve {
    private final double[] ascending;

    private Polynomial(double[] ascending) {
        this.ascending = ascending;
    }

    /** Returns the polynomial of these coefficients, the constant first. */
    public static Polynomial of(double... ascending) {
        return new Polynomial(ascending.length == 0 ? new double[1] : ascending.clone());
    }

    @Override
    public int degree() {
        return ascending.length - 1;
    }

    /** Returns the coefficient of a power, 0 beyond the degree. */
    public double coefficient(int power) {
        return power < ascending.length ? ascending[power] : 0;
    }

    /** Returns a copy of the coefficients, the constant first. */
    public double[] coefficients() {
        return ascending.clone();
    }

    /** Returns the value at x, by Horner's rule. */
    @Override
    public double valueAt(double x) {
        double value = ascending[ascending.length - 1];
        for (int i = ascending.length - 2; i >= 0; i--) {
            value = value * x + ascending[i];
        }
        return value;
    }

    @Override
    public double slopeAt(double x) {
        double value = 0;
        for (int i = ascending.length - 1; i > 0; i--) {
            value = value * x + i * ascending[i];
        }
        return value;
    }

    /** Returns the slope as a polynomial. */
    public Polynomial derivative() {
        double[] slope = new double[Math.max(1, degree())];
        for (int i = 1; i < ascending.length; i++) {
            slope[i - 1] = i * ascending[i];
        }
        return new Polynomial(slope);
    }

    /** Returns the sum. */
    public Polynomial plus(Polynomial other) {
        double[] sum = Arrays.copyOf(ascending, Math.max(ascending.length, other.ascending.length));
        for (int i = 0; i < other.ascending.length; i++) {
            sum[i] += other.ascending[i];
        }
        return new Polynomial(sum);
    }

    @Override
    public Polynomial times(double factor) {
        return new Polynomial(Arrays.stream(ascending).map(c -> factor * c).toArray());
    }

    /** Returns the product. */
    public Polynomial times(Polynomial other) {
        double[] product = new double[ascending.length + other.ascending.length - 1];
        for (int i = 0; i < ascending.length; i++) {
            for (int j = 0; j < other.ascending.length; j++) {
                product[i + j] += ascending[i] * other.ascending[j];
            }
        }
        return new Polynomial(product);
    }

    @Override
    public Polynomial ofScaled(double factor) {
        double[] scaled = ascending.clone();
        double power = 1;
        for (int i = 1; i < scaled.length; i++) {
            power *= factor;
            scaled[i] *= power;
        }
        return new Polynomial(scaled);
    }

    /** Returns the polynomial whose value at x is this one's at {@code x − by}. */
    public Polynomial shiftedBy(double by) {
        double[] shifted = ascending.clone();
        for (int i = 0; i < shifted.length; i++) {
            for (int j = shifted.length - 2; j >= i; j--) {
                shifted[j] -= by * shifted[j + 1];
            }
        }
        return new Polynomial(shifted);
    }

    @Override
    public double[] breaksIn(double low, double high) {
        return new double[0];
    }

    @Override
    public Polynomial pieceAt(double x) {
        return this;
    }

    /**
     * Returns every real root from {@code low} to {@code high} in increasing order, each once.
     *
     * <p>Between two neighbouring stationary points the polynomial only rises or only falls, so that a change of sign
     * brackets exactly one root; the stationary points are the roots of the derivative, found in the same way. A root
     * where the polynomial only touches 0 is found when it touches within rounding.
     */
    public double[] rootsIn(double low, double high) {
        double size = 0;
        double reach = Math.max(Math.abs(low), Math.abs(high));
        double power = 1;
        for (double c : ascending) {
            size = Math.max(size, Math.abs(c) * power);
            power *= reach;
        }
        return size == 0 || !(low <= high) ? new double[0] : rootsIn(low, high, ROUNDING * size);
    }

    /** Values within this share of the largest term count as 0. */
    private static final double ROUNDING = 4e-15;

    private double[] rootsIn(double low, double high, double nothing) {
        double[] stationary = degree() < 2 ? new double[0] : derivative().rootsIn(low, high);
        double[] stops = new double[stationary.length + 2];
        stops[0] = low;
        System.arraycopy(stationary, 0, stops, 1, stationary.length);
        stops[stops.length - 1] = high;
        double[] roots = new double[2 * stops.length];
        int found = 0;
        for (int i = 0; i < stops.length; i++) {
            if (i > 0 && crosses(stops[i - 1], stops[i], nothing)) {
                roots[found++] = Roots.between(this::valueAt, stops[i - 1], stops[i]);
            }
            boolean touches = Math.abs(valueAt(stops[i])) <= nothing;
            if (touches && (found == 0 || roots[found - 1] < stops[i])) {
                roots[found++] = stops[i];
            }
        }
        return Arrays.copyOf(roots, found);
    }

    private boolean crosses(double from, double to, double nothing) {
        double start = valueAt(from);
        double end = valueAt(to);
        return Math.abs(start) > nothing && Math.abs(end) > nothing && start > 0 != end > 0;
    }

    /** Equal when the coefficients are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Polynomial polynomial && Arrays.equals(ascending, polynomial.ascending);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(ascending);
    }

    /** Returns the coefficients, the constant first. */
    @Override
    public String toString() {
        return Arrays.toString(ascending);
    }
}

package headrace.circuit.part.fitting;

import headrace.units.Length;
import headrace.units.Numbers;

/**
 * {@code K = K₁/Re + K∞·(1 + 1/D)}, D inside in inches (Hooper 1981).
 *
 * @param k1 {@code K₁}
 * @param kInfinity {@code K∞}
 */
record TwoK(double k1, double kInfinity) implements FittingLoss {
    @Override
    public String method() {
        return "two K (Hooper 1981)";
    }

    @Override
    public double constantAt(Length inside) {
        return kInfinity * (1 + 1 / inside.toInches());
    }

    @Override
    public double overReynolds() {
        return k1;
    }

    @Override
    public boolean possible() {
        return k1 >= 0 && kInfinity >= 0 && k1 + kInfinity < Double.POSITIVE_INFINITY;
    }

    @Override
    public String toString() {
        return "K₁ " + Numbers.print(k1) + ", K∞ " + Numbers.print(kInfinity);
    }
}

package headrace.circuit.part.fitting;

import headrace.units.Length;
import headrace.units.Numbers;

/**
 * A K that is the same at every flow and size.
 *
 * @param k the K
 */
record ConstantK(double k) implements FittingLoss {
    @Override
    public String method() {
        return "a constant K";
    }

    @Override
    public double constantAt(Length inside) {
        return k;
    }

    @Override
    public boolean possible() {
        return k >= 0 && k < Double.POSITIVE_INFINITY;
    }

    @Override
    public String toString() {
        return "K " + Numbers.print(k);
    }
}

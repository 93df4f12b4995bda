package headrace.circuit.part.fitting;

import headrace.units.Numbers;

/**
 * The straight pipe that takes as much.
 *
 * @param diameters its length over its diameter
 */
record EquivalentLength(double diameters) implements FittingLoss {
    @Override
    public String method() {
        return "equivalent length";
    }

    @Override
    public boolean possible() {
        return diameters >= 0 && diameters < Double.POSITIVE_INFINITY;
    }

    @Override
    public String toString() {
        return Numbers.print(diameters) + " diameters";
    }
}

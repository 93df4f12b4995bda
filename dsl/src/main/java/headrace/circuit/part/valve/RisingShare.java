package headrace.circuit.part.valve;

import headrace.circuit.part.PartProblem;
import headrace.problem.Refusal;
import headrace.units.Numbers;

/** Linear or equal percentage, with a straight close over the first 1/R of the stroke. */
final class RisingShare implements Characteristic {
    private final boolean equalPercentage;
    private final double rangeability;
    private final double join;
    private final double joinShare;

    private RisingShare(boolean equalPercentage, double rangeability) {
        if (!(rangeability > 1)) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_PART,
                    "Asked for a characteristic with a rangeability of " + rangeability,
                    "A rangeability is above 1, and 30 to 50 is usual",
                    "Take it from the data sheet of the valve");
        }
        this.equalPercentage = equalPercentage;
        this.rangeability = rangeability;
        join = 1 / rangeability;
        joinShare = formula(join);
    }

    static RisingShare linear(double rangeability) {
        return new RisingShare(false, rangeability);
    }

    static RisingShare equalPercentage(double rangeability) {
        if (rangeability == Double.POSITIVE_INFINITY) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_PART,
                    "Asked for an equal-percentage characteristic without end of its rangeability",
                    "A rangeability is above 1 and finite, and 30 to 50 is usual",
                    "Take it from the data sheet of the valve");
        }
        return new RisingShare(true, rangeability);
    }

    private double formula(double opening) {
        return equalPercentage
                ? Math.exp((opening - 1) * Math.log(rangeability))
                : 1 / rangeability + (1 - 1 / rangeability) * opening;
    }

    @Override
    public double shareAt(double opening) {
        double x = Math.min(1, Math.max(0, opening));
        return x < join ? joinShare * x / join : formula(x);
    }

    @Override
    public double openingAt(double share) {
        double kappa = Math.min(1, Math.max(0, share));
        if (kappa < joinShare) {
            return join * kappa / joinShare;
        }
        double floor = 1 / rangeability;
        return equalPercentage ? 1 + Math.log(kappa) / Math.log(rangeability) : (kappa - floor) / (1 - floor);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RisingShare rising
                && rising.equalPercentage == equalPercentage
                && rising.rangeability == rangeability;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(rangeability) + (equalPercentage ? 1 : 0);
    }

    @Override
    public String toString() {
        String kind = equalPercentage ? "equal percentage" : "linear";
        return rangeability == Double.POSITIVE_INFINITY ? kind : kind + ", rangeability " + Numbers.print(rangeability);
    }
}

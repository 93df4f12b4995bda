package headrace.circuit.part.fitting;

import headrace.units.Length;
import headrace.units.Numbers;

/**
 * {@code K = K₁/Re + K_i·(1 + K_d/D^0.3)}, D in inches (Darby 2001).
 *
 * @param k1 {@code K₁}
 * @param ki {@code K_i}
 * @param kd {@code K_d} in in^0.3
 */
record ThreeK(double k1, double ki, double kd) implements FittingLoss {
    private static final double POWER = 0.3;

    @Override
    public String method() {
        return "three K (Darby 2001)";
    }

    @Override
    public double constantAt(Length inside) {
        return ki * (1 + kd / Math.pow(inside.toInches(), POWER));
    }

    @Override
    public double overReynolds() {
        return k1;
    }

    @Override
    public boolean possible() {
        return k1 >= 0 && ki >= 0 && kd >= 0 && k1 + ki + kd < Double.POSITIVE_INFINITY;
    }

    @Override
    public String toString() {
        return "K₁ " + Numbers.print(k1) + ", K_i " + Numbers.print(ki) + ", K_d " + Numbers.print(kd);
    }
}

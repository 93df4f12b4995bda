package headrace.liquid;

/**
 * The dynamic viscosity of water without the critical enhancement, which matters only near 374 °C.
 *
 * <p>Source: IAPWS R12-08, equations 11 and 12 with tables 1 and 2.
 */
final class WaterViscosity {
    private static final double CRITICAL_KELVINS = 647.096;
    private static final double CRITICAL_DENSITY = 322.0;
    private static final double[] DILUTE = {1.67752, 2.20462, 0.6366564, -0.241605};
    /** H with a row for each power of 1/T̄ − 1 and a column for each power of ρ̄ − 1. */
    private static final double[][] DENSE = {
        {5.20094e-1, 2.22531e-1, -2.81378e-1, 1.61913e-1, -3.25372e-2, 0, 0},
        {8.50895e-2, 9.99115e-1, -9.06851e-1, 2.57399e-1, 0, 0, 0},
        {-1.08374, 1.88797, -7.72479e-1, 0, 0, 0, 0},
        {-2.89555e-1, 1.26613, -4.89837e-1, 0, 6.98452e-2, 0, -4.35673e-3},
        {0, 0, -2.57040e-1, 0, 0, 8.72102e-3, 0},
        {0, 1.20573e-1, 0, 0, 0, 0, -5.93264e-4},
    };

    private WaterViscosity() {}

    static double pascalSeconds(double kilogramsPerCubicMetre, double kelvins) {
        double t = kelvins / CRITICAL_KELVINS;
        double rho = kilogramsPerCubicMetre / CRITICAL_DENSITY;
        double dilute = 0;
        for (int i = DILUTE.length - 1; i >= 0; i--) {
            dilute = dilute / t + DILUTE[i];
        }
        double sum = 0;
        for (int i = DENSE.length - 1; i >= 0; i--) {
            double row = 0;
            for (int j = DENSE[i].length - 1; j >= 0; j--) {
                row = row * (rho - 1) + DENSE[i][j];
            }
            sum = sum * (1 / t - 1) + row;
        }
        return 1e-6 * 100 * Math.sqrt(t) / dilute * Math.exp(rho * sum);
    }
}

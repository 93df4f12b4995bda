package headrace.circuit.part.coil;

/**
 * How near a heat exchanger comes to the greatest heat that could pass, against its transfer units and the ratio of the
 * smaller to the larger capacity rate.
 *
 * <p>Source: textbook knowledge, Kays and London, Compact Heat Exchangers; the cross-flow form, both sides unmixed, is
 * an approximation within some 1 %.
 */
public enum Effectiveness {
    /** The streams run against each other, as nearly in a coil of many rows. */
    COUNTER_FLOW {
        @Override
        public double at(double transferUnits, double ratio) {
            if (Math.abs(1 - ratio) < EQUAL) {
                return transferUnits / (1 + transferUnits);
            }
            double rest = Math.exp(-transferUnits * (1 - ratio));
            return (1 - rest) / (1 - ratio * rest);
        }
    },
    /** The streams cross, both unmixed, as in a coil of few rows. */
    CROSS_FLOW {
        @Override
        public double at(double transferUnits, double ratio) {
            if (ratio < EQUAL || transferUnits == 0) {
                return 1 - Math.exp(-transferUnits);
            }
            double power = Math.pow(transferUnits, 0.22);
            return 1 - Math.exp(power / ratio * (Math.exp(-ratio * transferUnits / power) - 1));
        }
    };

    private static final double EQUAL = 1e-9;

    /**
     * Returns the effectiveness.
     *
     * @param transferUnits {@code NTU = UA/C_min}, 0 or more
     * @param ratio {@code C_min/C_max}, from 0 to 1
     */
    public abstract double at(double transferUnits, double ratio);
}

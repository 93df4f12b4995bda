package headrace.numeric;

/**
 * A number raised to one power, again and again: several times as fast as {@link Math#pow}, and right to a few units of
 * the last digit.
 *
 * <p>A number is {@code 2ᵉ·c·(1 + t)} with c the middle of one of 128 parts of 1 to 2, so that |t| is below 1/256 and
 * the binomial series of {@code (1 + t)^p} is at its last digit after seven terms; the powers of 2ᵉ and of c stand in
 * tables.
 */
public final class FixedPower {
    private static final int PARTS_BITS = 7;
    private static final int PARTS = 1 << PARTS_BITS;
    private static final int MANTISSA_BITS = 52;
    private static final int BIAS = 1023;
    private static final int REACH = 64;
    private static final long MANTISSA = (1L << MANTISSA_BITS) - 1;
    private static final long ONE = (long) BIAS << MANTISSA_BITS;

    private final double exponent;
    private final double[] ofMiddles = new double[PARTS];
    private final double[] inverses = new double[PARTS];
    private final double[] ofTwos = new double[2 * REACH];
    private final double c1;
    private final double c2;
    private final double c3;
    private final double c4;
    private final double c5;
    private final double c6;

    private FixedPower(double exponent) {
        this.exponent = exponent;
        for (int i = 0; i < PARTS; i++) {
            double middle = 1 + (i + 0.5) / PARTS;
            ofMiddles[i] = Math.pow(middle, exponent);
            inverses[i] = 1 / middle;
        }
        for (int i = 0; i < 2 * REACH; i++) {
            ofTwos[i] = Math.pow(2, exponent * (i - REACH));
        }
        c1 = exponent;
        c2 = c1 * (exponent - 1) / 2;
        c3 = c2 * (exponent - 2) / 3;
        c4 = c3 * (exponent - 3) / 4;
        c5 = c4 * (exponent - 4) / 5;
        c6 = c5 * (exponent - 5) / 6;
    }

    /** Returns what raises numbers to a power, from −4 to 4. */
    public static FixedPower of(double exponent) {
        return new FixedPower(exponent);
    }

    /** Returns the power of a number; of one outside 2⁻⁶⁴ to 2⁶⁴ as {@link Math#pow} gives it. */
    public double at(double x) {
        long bits = Double.doubleToRawLongBits(x);
        int two = (int) (bits >>> MANTISSA_BITS) - BIAS + REACH;
        if (two < 0 || two >= 2 * REACH) {
            return Math.pow(x, exponent);
        }
        int part = (int) (bits >>> MANTISSA_BITS - PARTS_BITS) & PARTS - 1;
        double t = Double.longBitsToDouble(bits & MANTISSA | ONE) * inverses[part] - 1;
        double series = t * (c1 + t * (c2 + t * (c3 + t * (c4 + t * (c5 + t * c6)))));
        double scale = ofMiddles[part] * ofTwos[two];
        return scale + scale * series;
    }
}

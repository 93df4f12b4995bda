package headrace.units;

import headrace.problem.Refusal;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Prints numbers the same in every locale. */
public final class Numbers {
    private static final MathContext FOUR_DIGITS = new MathContext(4);

    /** From here on, and below {@link #MOST_PLAIN}, digits before the point are never rounded away. */
    private static final double WHOLE_FROM = 1e4;

    private static final double LEAST_PLAIN = 1e-4;
    private static final double MOST_PLAIN = 1e9;

    private Numbers() {}

    /**
     * Returns the value with four significant digits, and no fewer than stand before the point: {@code 0.1235},
     * {@code 12.35}, {@code 12346}. Thousands are not grouped, trailing zeros left out. Sizes that are not ordinary,
     * below 0.0001 and from a thousand million on, are printed as {@code 1.235e-7}. Halves are rounded up, as they are
     * written and not as they are held in binary.
     *
     * @throws Refusal with {@code IMPOSSIBLE_QUANTITY} if it is not a finite number
     */
    public static String print(double value) {
        if (!Double.isFinite(value)) {
            throw new Refusal(
                    UnitProblem.IMPOSSIBLE_QUANTITY,
                    "Asked to print " + value,
                    "Only finite numbers are printed",
                    "Look for a division by zero, or a blank cell of a file, that led to it");
        }
        double size = Math.abs(value);
        if (size >= WHOLE_FROM && size < MOST_PLAIN) {
            return decimals(value, 0);
        }
        BigDecimal rounded = BigDecimal.valueOf(value).round(FOUR_DIGITS).stripTrailingZeros();
        if (size == 0 || size >= LEAST_PLAIN && size < MOST_PLAIN) {
            return rounded.toPlainString();
        }
        int exponent = rounded.precision() - rounded.scale() - 1;
        return rounded.movePointLeft(exponent).stripTrailingZeros().toPlainString() + "e" + exponent;
    }

    /** Returns the value with so many decimals, trailing zeros kept. */
    static String decimals(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}

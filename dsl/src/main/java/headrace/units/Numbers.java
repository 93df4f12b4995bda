package headrace.units;

import java.math.BigDecimal;
import java.math.MathContext;

/** Prints numbers the same in every locale. */
public final class Numbers {
    private static final MathContext FOUR_DIGITS = new MathContext(4);

    private Numbers() {}

    /** Returns the value with four significant digits, without an exponent and without trailing zeros. */
    public static String print(double value) {
        return new BigDecimal(value, FOUR_DIGITS).stripTrailingZeros().toPlainString();
    }
}

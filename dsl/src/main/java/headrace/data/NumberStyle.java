package headrace.data;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** How a file writes its numbers and parts its cells. The caller says it; it is never guessed. */
public enum NumberStyle {
    /** Decimal points, and commas between cells. */
    DECIMAL_POINT('.', ','),
    /** Decimal commas, and semicolons between cells. */
    DECIMAL_COMMA(',', ';');

    private final char decimal;
    private final char separator;
    private final Pattern number;

    NumberStyle(char decimal, char separator) {
        this.decimal = decimal;
        this.separator = separator;
        this.number = Pattern.compile(
                "[+-]?([0-9]+([" + decimal + "][0-9]*)?|[" + decimal + "][0-9]+)([eE][+-]?[0-9]{1,3})?");
    }

    /** Returns the decimal mark. */
    public char decimal() {
        return decimal;
    }

    /** Returns what stands between two cells. */
    public char separator() {
        return separator;
    }

    /** Returns the number that the whole text says, if it says a finite one in digits of this style. */
    public OptionalDouble parse(String text) {
        if (!number.matcher(text).matches()) {
            return OptionalDouble.empty();
        }
        double value = Double.parseDouble(text.replace(decimal, '.'));
        return Double.isFinite(value) ? OptionalDouble.of(value + 0.0) : OptionalDouble.empty();
    }

    /** Returns what a number looks like, for a message. */
    String example() {
        return this == DECIMAL_POINT ? "12.5" : "12,5";
    }
}

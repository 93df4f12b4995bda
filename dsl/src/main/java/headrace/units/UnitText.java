package headrace.units;

import headrace.problem.Refusal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A text taken apart into its number and its unit. */
record UnitText(double number, String unit) {
    private static final Pattern SPACE = Pattern.compile("[\\s\\u00A0\\u2007\\u2009\\u202F\\u200B\\uFEFF]+");
    private static final Pattern MULTIPLIED = Pattern.compile("[·⋅•*^]");
    private static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("([+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?) ?(.*)");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?[0-9.]*,[0-9].*");
    private static final Pattern GROUPED = Pattern.compile("[+-]?[0-9]{1,3}( [0-9]{3})+\\b.*");

    /**
     * Takes a text apart.
     *
     * @param text what was written
     * @param wanted what it should be, such as {@code a flow}
     * @param unit a unit that would fit
     * @throws Refusal with {@code UNREADABLE_QUANTITY} if it is no number followed by a unit
     */
    static UnitText of(String text, String wanted, String unit) {
        String plain = SPACE.matcher(text).replaceAll(" ").strip().replace('\u2212', '-');
        Matcher parts = NUMBER_AND_UNIT.matcher(plain);
        if (DECIMAL_COMMA.matcher(plain).matches() || GROUPED.matcher(plain).matches()) {
            throw unreadable(text, wanted, "Write the decimal mark as a point and do not group digits: 1234.5 " + unit);
        }
        if (!parts.matches()) {
            throw unreadable(text, wanted, "Write it as 12.5 " + unit);
        }
        if (parts.group(2).isEmpty()) {
            throw unreadable(text, wanted, "Say the unit too, as in " + parts.group(1) + " " + unit);
        }
        return new UnitText(Double.parseDouble(parts.group(1)), parts.group(2));
    }

    /** Returns a unit without the freedoms of its spelling: spaces, raised digits, dots of multiplication. */
    static String plain(String unit) {
        String joined = SPACE.matcher(unit).replaceAll("");
        return MULTIPLIED
                .matcher(joined)
                .replaceAll("")
                .replace('²', '2')
                .replace('³', '3')
                .replace("⁻¹", "-1")
                .replace('º', '°')
                .replace("℃", "°C")
                .replace("℉", "°F");
    }

    private static Refusal unreadable(String text, String wanted, String next) {
        return new Refusal(
                UnitProblem.UNREADABLE_QUANTITY,
                "Asked to read '" + text + "' as " + wanted,
                "A quantity is a number, with a point as its decimal mark, and a unit",
                next.strip());
    }
}

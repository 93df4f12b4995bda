package headrace.data;

import headrace.problem.Refusal;
import headrace.units.Kind;
import headrace.units.Quantity;
import headrace.units.UnitSystem;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A column of a table: its name, and the unit of its numbers or that it holds text.
 *
 * <p>Numbers are kept in the column's own unit, so that a table that was written and read again holds the same bits.
 *
 * @param name the name as it stands in the head of the column, without brackets
 * @param unit the symbol of the unit, {@code 1} for plain numbers; empty for text
 */
public record Column(String name, Optional<String> unit) {
    private static final String PLAIN = "1";
    private static final Pattern FORBIDDEN = Pattern.compile("[\\[\\]\\p{Cntrl}]");
    private static final Pattern HEADER = Pattern.compile("(.*?)\\s*\\[([^\\[\\]]+)]");

    /** Refuses a name or a unit that could not be read back, with {@code WRONG_COLUMN}. */
    public Column {
        if (!readable(name) || !unit.map(Column::readable).orElse(true)) {
            throw new Refusal(
                    DataProblem.WRONG_COLUMN,
                    "Asked for a table column called '" + name
                            + unit.map(text -> " [" + text + "]").orElse("") + "'",
                    "A column's name and unit have at least one letter each, and no brackets, line breaks or blanks at their ends",
                    "Give it another name");
        }
    }

    /** Returns a column of text. */
    public static Column text(String name) {
        return new Column(name, Optional.empty());
    }

    /** Returns a column of plain numbers. */
    public static Column number(String name) {
        return new Column(name, Optional.of(PLAIN));
    }

    /** Returns a column of numbers in a unit, given by its symbol, or in a currency. */
    public static Column in(String name, String unit) {
        return new Column(name, Optional.of(unit.isEmpty() ? PLAIN : unit));
    }

    /** Returns a column for a kind of quantity, in the unit in which this thread prints it. */
    public static <Q extends Quantity<Q>> Column of(String name, Kind<Q> kind) {
        return in(name, UnitSystem.current().unitOf(kind).symbol());
    }

    /** Returns whether the column holds numbers. */
    public boolean numeric() {
        return unit.isPresent();
    }

    /** Returns the head of the column, such as {@code flow [m³/h]}. */
    public String header() {
        return name + unit.map(symbol -> " [" + symbol + "]").orElse("");
    }

    /** Returns the head of the column as a person reads it: plain numbers say no unit. */
    public String heading() {
        return unit.filter(PLAIN::equals).isPresent() ? name : header();
    }

    /** Returns the column of such a head. */
    static Column read(String header) {
        Matcher matcher = HEADER.matcher(header);
        return matcher.matches() ? in(matcher.group(1), matcher.group(2)) : text(header);
    }

    private static boolean readable(String text) {
        return !text.isBlank()
                && text.equals(text.strip())
                && !FORBIDDEN.matcher(text).find();
    }

    /** Returns a quantity as a number in this column's unit. */
    double numberOf(Quantity<?> quantity) {
        return quantity.in(unit.filter(symbol -> !symbol.equals(PLAIN)).orElse(""));
    }
}

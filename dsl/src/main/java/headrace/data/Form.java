package headrace.data;

import headrace.problem.Refusal;
import headrace.units.Kind;
import headrace.units.Numbers;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a kind of file can hold.
 *
 * @param name the kind of file as it stands in a sentence
 * @param keys the keys of its head lines
 * @param fields its columns
 */
record Form(String name, List<String> keys, List<Field<?>> fields) {
    /**
     * A column of the file.
     *
     * @param column its name
     * @param kind what it measures; nothing for a text
     * @param required whether the file must have it
     * @param least the least value that is possible
     * @param most the greatest value that is possible
     */
    record Field<Q extends Quantity<Q>>(String column, Kind<Q> kind, boolean required, Q least, Q most) {
        /** Returns a column that holds texts. */
        static Field<Ratio> text(String column, boolean required) {
            return new Field<>(column, null, required, null, null);
        }

        boolean holdsText() {
            return kind == null;
        }

        /** Returns the head of the column as a file could have it. */
        String header() {
            return holdsText() ? column : column + " [" + spelling(kind) + "]";
        }

        /** Returns the quantity that stands in an entry, in the column's unit. */
        Q quantity(Entry entry, String unit, NumberStyle style) {
            double value =
                    entry.number(style, "a " + column + " in " + kind.unit(unit).symbol());
            Q quantity;
            try {
                quantity = kind.of(value, unit);
            } catch (Refusal refusal) {
                throw refusal.at(entry.place());
            }
            if (quantity.compareTo(least) < 0 || quantity.compareTo(most) > 0) {
                throw entry.refused(
                        DataProblem.VALUE_NOT_POSSIBLE,
                        "Asked to read a " + column + " of " + entry.text() + " "
                                + kind.unit(unit).symbol(),
                        "A " + column + " lies between " + printed(least, unit) + " and " + printed(most, unit),
                        "See to the sign, the decimal point and the unit of the column");
            }
            return quantity;
        }

        private String printed(Q limit, String unit) {
            return Numbers.print(limit.in(unit)) + " " + kind.unit(unit).symbol();
        }
    }

    Optional<Field<?>> field(String column) {
        return fields.stream().filter(field -> field.column().equals(column)).findFirst();
    }

    /** Returns the names of the columns with a unit each, as the head of a file could have them. */
    String example() {
        return fields.stream().map(Field::header).collect(Collectors.joining(", "));
    }

    String columnNames() {
        return fields.stream().map(Field::column).collect(Collectors.joining(", "));
    }

    /** Returns the units of a kind in letters that every keyboard has, where there are some. */
    static String spellings(Kind<?> kind) {
        return kind.units().stream()
                .filter(unit -> !unit.symbol().isEmpty())
                .map(unit -> plain(unit.symbol(), unit.spellings()))
                .collect(Collectors.joining(", "));
    }

    private static String spelling(Kind<?> kind) {
        Unit unit = kind.unit(kind.metric());
        return plain(unit.symbol(), unit.spellings());
    }

    private static String plain(String symbol, List<String> spellings) {
        return symbol.chars().allMatch(c -> c < 128)
                ? symbol
                : spellings.stream().findFirst().orElse(symbol);
    }

    /** Returns the name in the form in which names are compared. */
    static String normal(String name) {
        return Arrays.stream(name.strip().split("\\s+"))
                .map(word -> word.toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" "));
    }
}

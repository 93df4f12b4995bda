package headrace.units;

import headrace.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * What a quantity is: its name, its units, and how it is made from a number of one of them.
 *
 * @param name the name as it stands in a sentence, such as {@code flow}
 * @param type the class of its quantities
 * @param make makes a quantity from its SI value
 * @param units its units, the SI unit first
 * @param metric the word of the unit in which the metric system prints it
 * @param usCustomary the word of the unit in which the US customary system prints it
 * @param <Q> the class of its quantities
 */
public record Kind<Q extends Quantity<Q>>(
        String name, Class<Q> type, DoubleFunction<Q> make, List<Unit> units, String metric, String usCustomary) {
    /** Keeps the units from changing. */
    public Kind {
        units = List.copyOf(units);
    }

    /**
     * Returns the quantity of so many of a unit.
     *
     * @throws Refusal with {@code UNKNOWN_UNIT} if this kind has no unit of that word, symbol or spelling
     */
    public Q of(double value, String unit) {
        return make.apply(unit(unit).toSi(value));
    }

    /**
     * Returns the unit of a word, a symbol or a spelling.
     *
     * @throws Refusal with {@code UNKNOWN_UNIT} if there is none
     */
    public Unit unit(String text) {
        return find(text)
                .orElseThrow(() -> new Refusal(
                        UnitProblem.UNKNOWN_UNIT,
                        "Asked for a " + name + " in '" + text + "'",
                        "A " + name + " can be in "
                                + String.join(
                                        ", ", units.stream().map(Unit::symbol).toList()),
                        "Use one of these units"));
    }

    /** Returns the unit of a word, a symbol or a spelling, if this kind has it. */
    public Optional<Unit> find(String text) {
        return units.stream()
                .filter(unit -> unit.word().equals(text)
                        || unit.symbol().equals(text)
                        || unit.spellings().contains(text))
                .findFirst();
    }

    @Override
    public String toString() {
        return name;
    }
}

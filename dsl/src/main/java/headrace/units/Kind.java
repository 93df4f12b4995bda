package headrace.units;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;

/**
 * What a quantity is: its name, its units, and how it is made from a number or a text with one of them.
 *
 * @param <Q> the class of its quantities
 */
public final class Kind<Q extends Quantity<Q>> {
    private final String name;
    private final Class<Q> type;
    private final DoubleFunction<Q> make;
    private final List<Unit> units;
    private final String metric;
    private final String usCustomary;
    private final Map<String, Unit> spelled = new HashMap<>();

    /**
     * Describes a kind.
     *
     * @param name the name as it stands in a sentence, such as {@code flow}
     * @param type the class of its quantities
     * @param make makes a quantity from its SI value
     * @param units its units, the SI unit first
     * @param metric the word of the unit in which the metric system prints it
     * @param usCustomary the word of the unit in which the US customary system prints it
     */
    public Kind(
            String name, Class<Q> type, DoubleFunction<Q> make, List<Unit> units, String metric, String usCustomary) {
        this.name = name;
        this.type = type;
        this.make = make;
        this.units = List.copyOf(units);
        this.metric = metric;
        this.usCustomary = usCustomary;
        for (Unit unit : units) {
            Stream.concat(Stream.of(unit.word(), unit.symbol()), unit.spellings().stream())
                    .map(UnitText::plain)
                    .filter(text -> !text.isEmpty())
                    .forEach(text -> spelled.putIfAbsent(text, unit));
        }
    }

    /** Returns the name as it stands in a sentence, such as {@code flow}. */
    public String name() {
        return name;
    }

    /** Returns the name with its article, such as {@code a flow} or {@code an area}. */
    public String one() {
        return ("aeio".indexOf(name.charAt(0)) < 0 ? "a " : "an ") + name;
    }

    /** Returns the class of its quantities. */
    public Class<Q> type() {
        return type;
    }

    /** Returns what makes a quantity from its SI value. */
    public DoubleFunction<Q> make() {
        return make;
    }

    /** Returns its units, the SI unit first. */
    public List<Unit> units() {
        return units;
    }

    /** Returns the word of the unit in which the metric system prints it. */
    public String metric() {
        return metric;
    }

    /** Returns the word of the unit in which the US customary system prints it. */
    public String usCustomary() {
        return usCustomary;
    }

    /**
     * Returns the quantity of so many of a unit.
     *
     * @throws Refusal with {@code UNKNOWN_UNIT} if this kind has no unit of that word, symbol or spelling
     */
    public Q of(double value, String unit) {
        Unit said = unit(unit);
        return make.apply(said.toSi(value)).saidIn(said);
    }

    /**
     * Reads a number and its unit, such as {@code 230 gpm}. The decimal mark is a point; digits are not grouped.
     *
     * @throws Refusal with {@code UNREADABLE_QUANTITY} if it is no number followed by a unit, with {@code UNKNOWN_UNIT}
     *     if this kind has no such unit
     */
    public Q parse(String text) {
        UnitText read = UnitText.of(text, one(), units.get(0).symbol());
        return of(read.number(), read.unit());
    }

    /**
     * Returns the unit of a word, a symbol or a spelling.
     *
     * @throws Refusal with {@code UNKNOWN_UNIT} if there is none
     */
    public Unit unit(String text) {
        return find(text).orElseThrow(() -> unknown(text));
    }

    /** Returns the unit of a word, a symbol or a spelling, if this kind has it. */
    public Optional<Unit> find(String text) {
        return Optional.ofNullable(spelled.get(text)).or(() -> Optional.ofNullable(spelled.get(UnitText.plain(text))));
    }

    private Refusal unknown(String text) {
        List<String> symbols = units.stream()
                .map(Unit::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .toList();
        List<String> near = Nearest.to(text, symbols);
        return new Refusal(
                UnitProblem.UNKNOWN_UNIT,
                "Asked for " + one() + " in '" + text + "'",
                "Its units are " + Nearest.either(symbols),
                Nearest.sentence(near, "Use one of these units"));
    }

    @Override
    public String toString() {
        return name;
    }
}

package headrace.script;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.units.EnergyPrice;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;

/**
 * The choices by name of a word, such as {@code minimumHead: 40.percent}, read as what the word wants.
 *
 * <p>A word whose first parameter is {@code Map<String, ?>} gets them from the script and begins with
 *
 * <pre>{@code
 * Choices choices = Choices.of("motor", given, "ie", "poles");
 * int poles = choices.whole("poles", 4);
 * }</pre>
 *
 * <p>The form with a default answers it where the choice was not made; the form without refuses that.
 *
 * <dl>
 *   <dt>Errors
 *   <dd>{@code UNKNOWN_CHOICE} with the nearest names, {@code MISSING_CHOICE}, and what {@link Wanted} refuses
 * </dl>
 */
public final class Choices {
    private final String word;
    private final Map<String, ?> given;

    private Choices(String word, Map<String, ?> given) {
        this.word = word;
        this.given = given;
    }

    /**
     * Reads the choices of a word.
     *
     * @param word the word, as its user writes it
     * @param given the choices that were made
     * @param known the names of all its choices
     */
    public static Choices of(String word, Map<String, ?> given, String... known) {
        List<String> names = List.of(known);
        for (Object name : given.keySet()) {
            if (!names.contains(String.valueOf(name))) {
                List<String> near = Nearest.to(String.valueOf(name), names);
                throw new Refusal(
                        ScriptProblem.UNKNOWN_CHOICE,
                        "The word " + word + " was given the choice '" + name + ":'",
                        "Its choices are " + String.join(", ", names),
                        near.isEmpty() ? "Use one of these, or leave it out" : "The nearest is " + near.get(0) + ":");
            }
        }
        return new Choices(word, given);
    }

    /** Returns whether a choice was made. */
    public boolean has(String name) {
        return given.get(name) != null;
    }

    /** Returns a quantity of a kind. */
    public <Q extends Quantity<Q>> Q quantity(String name, Kind<Q> kind) {
        return needed(name, (value, place) -> Wanted.quantity(kind, value, place));
    }

    /** Returns a quantity of a kind, or the default. */
    public <Q extends Quantity<Q>> Q quantity(String name, Kind<Q> kind, Q otherwise) {
        return has(name) ? quantity(name, kind) : otherwise;
    }

    /** Returns a head; a length is taken as metres of the liquid. */
    public Head head(String name) {
        return quantity(name, Head.KIND);
    }

    /** Returns a head, or the default. */
    public Head head(String name, Head otherwise) {
        return quantity(name, Head.KIND, otherwise);
    }

    /** Returns a ratio. */
    public Ratio ratio(String name) {
        return quantity(name, Ratio.KIND);
    }

    /** Returns a ratio, or the default. */
    public Ratio ratio(String name, Ratio otherwise) {
        return quantity(name, Ratio.KIND, otherwise);
    }

    /** Returns a price of energy. */
    public EnergyPrice price(String name) {
        return needed(name, Wanted::price);
    }

    /** Returns a price of energy, or the default. */
    public EnergyPrice price(String name, EnergyPrice otherwise) {
        return has(name) ? price(name) : otherwise;
    }

    /** Returns a plain number, where no unit belongs to it. */
    public double number(String name) {
        return needed(name, Wanted::number);
    }

    /** Returns a plain number, or the default. */
    public double number(String name, double otherwise) {
        return has(name) ? number(name) : otherwise;
    }

    /** Returns a whole number. */
    public int whole(String name) {
        return needed(name, Wanted::whole);
    }

    /** Returns a whole number, or the default. */
    public int whole(String name, int otherwise) {
        return has(name) ? whole(name) : otherwise;
    }

    /** Returns a text. */
    public String text(String name) {
        return object(name, CharSequence.class).toString();
    }

    /** Returns a text, or the default. */
    public String text(String name, String otherwise) {
        return has(name) ? text(name) : otherwise;
    }

    /** Returns yes or no, or the default. */
    public boolean yes(String name, boolean otherwise) {
        return object(name, Boolean.class, otherwise);
    }

    /** Returns what is of a type. */
    public <T> T object(String name, Class<T> type) {
        return needed(name, (value, place) -> Wanted.object(type, value, place));
    }

    /** Returns what is of a type, or the default. */
    public <T> T object(String name, Class<T> type, T otherwise) {
        return has(name) ? object(name, type) : otherwise;
    }

    private <T> T needed(String name, BiFunction<Object, String, T> as) {
        if (!has(name)) {
            throw new Refusal(
                    ScriptProblem.MISSING_CHOICE,
                    "The word " + word + " was used without the choice " + name + ":",
                    "It cannot do without it",
                    "Add it, as help('" + word + "') shows");
        }
        return as.apply(given.get(name), "the choice " + name + ": of " + word);
    }
}

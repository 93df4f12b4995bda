package headrace.script;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Quantities;
import headrace.units.UnitProblem;
import java.util.List;
import java.util.stream.Stream;

/**
 * Lets a script write {@code 52.m3ph}, {@code 5.5.kW}, {@code 120.EUR} and {@code 0.18.perKWh}.
 *
 * <p>Groovy asks here for every property that a number does not have, so that each unit of each kind is a word without
 * being listed twice.
 */
public final class NumberUnits {
    private static final String PER_KILOWATT_HOUR = "perKWh";

    private NumberUnits() {}

    /**
     * Reads the number as so many of a unit, of a currency, or as a price of energy in a currency that is not said.
     *
     * @throws Refusal with {@code UNKNOWN_UNIT} and the nearest words if the word is none of these
     */
    public static Object propertyMissing(Number self, String word) {
        double value = self.doubleValue();
        if (word.equals(PER_KILOWATT_HOUR)) {
            return new EnergyPrice(new Money(value, ""));
        }
        if (Money.CURRENCIES.contains(word)) {
            return new Money(value, word);
        }
        return Quantities.of(value, word).<Object>map(quantity -> quantity).orElseThrow(() -> unknown(self, word));
    }

    /** Reads an amount of money as the price of a kWh, as in {@code 0.18.EUR.perKWh}. */
    public static EnergyPrice getPerKWh(Money self) {
        return new EnergyPrice(self);
    }

    /** Returns all words that may follow a number. */
    static List<String> words() {
        return Stream.of(
                        Vocabulary.all().unitWords().stream()
                                .map(word -> word.unit().word()),
                        Money.CURRENCIES.stream(),
                        Stream.of(PER_KILOWATT_HOUR))
                .flatMap(words -> words)
                .toList();
    }

    private static Refusal unknown(Number self, String word) {
        List<String> near = Nearest.to(word, words());
        return new Refusal(
                UnitProblem.UNKNOWN_UNIT,
                "The number " + self + " was followed by '" + word + "'",
                "No unit has that word",
                Nearest.sentence(near, "help('units') lists them all"));
    }
}

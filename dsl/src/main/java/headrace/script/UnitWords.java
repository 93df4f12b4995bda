package headrace.script;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Quantities;
import headrace.units.Quantity;
import headrace.units.UnitSystem;
import java.util.Arrays;
import java.util.List;

/** Words about quantities and the units they are printed in. */
public final class UnitWords implements Words {
    @Override
    public String subject() {
        return "Quantities";
    }

    /** Tells in which units results are printed. */
    @Word(help = "Tells in which units results are printed.", example = "printedUnits()")
    public static UnitSystem printedUnits() {
        return UnitSystem.current();
    }

    /**
     * Chooses in which units results are printed.
     *
     * @throws Refusal with {@code UNKNOWN_WORD} if there is no such system
     */
    @Word(
            help = "Prints results from here on in 'metric', 'US' or 'imperial' units. No calculation changes.",
            example = "printedUnits('US')")
    public static UnitSystem printedUnits(String system) {
        List<String> names =
                Arrays.stream(UnitSystem.values()).map(UnitSystem::word).toList();
        for (UnitSystem each : UnitSystem.values()) {
            if (each.word().equalsIgnoreCase(system)) {
                each.choose();
                return each;
            }
        }
        List<String> near = Nearest.to(system, names);
        throw new Refusal(
                ScriptProblem.UNKNOWN_WORD,
                "Asked to print results in '" + system + "' units",
                "Results can be printed in " + Nearest.either(names) + " units",
                near.isEmpty() ? "Choose one of these" : "The nearest is " + near.get(0));
    }

    /** Reads a quantity from a text. */
    @Word(help = "Reads a number and its unit from a text, the decimal mark a point.", example = "quantity('230 gpm')")
    public static Quantity<?> quantity(String text) {
        return Quantities.parse(text);
    }

    /** Makes an amount of money. */
    @Word(
            help = "An amount of money in any currency, by its code of ISO 4217; the common ones follow a number.",
            example = "money(120, 'NOK')")
    public static Money money(Number amount, String currency) {
        return Money.of(amount.doubleValue(), currency);
    }
}

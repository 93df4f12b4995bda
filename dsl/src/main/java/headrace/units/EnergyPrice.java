package headrace.units;

import headrace.problem.Refusal;
import java.util.regex.Pattern;

/**
 * A price of energy.
 *
 * @param perKilowattHour what 1 kWh costs
 */
public record EnergyPrice(Money perKilowattHour) implements Comparable<EnergyPrice>, Operand {
    private static final Pattern PER_KILOWATT_HOUR = Pattern.compile("(.*[^\\s/])?\\s*(?:/|\\bper\\b)\\s*kWh\\s*");

    /**
     * Reads a price, such as {@code 0.18 EUR/kWh}, or {@code 0.18 /kWh} where the currency is not said.
     *
     * @throws Refusal with {@code UNREADABLE_QUANTITY} or {@code UNKNOWN_CURRENCY}
     */
    public static EnergyPrice parse(String text) {
        UnitText read = UnitText.of(text, "a price of energy", "EUR/kWh");
        var parts = PER_KILOWATT_HOUR.matcher(read.unit());
        if (!parts.matches()) {
            throw new Refusal(
                    UnitProblem.UNREADABLE_QUANTITY,
                    "Asked to read '" + text + "' as a price of energy",
                    "It is a number, a currency and '/kWh'",
                    "Write it as 0.18 EUR/kWh");
        }
        String currency = parts.group(1);
        return new EnergyPrice(currency == null ? new Money(read.number(), "") : Money.of(read.number(), currency));
    }

    /** Returns what this much energy costs. */
    public Money of(Energy energy) {
        return perKilowattHour.times(energy.toKilowattHours());
    }

    /**
     * Returns the sum, as of a tariff and a levy.
     *
     * @throws Refusal with {@code MEANINGLESS_ARITHMETIC} if the currencies differ
     */
    public EnergyPrice plus(EnergyPrice other) {
        return new EnergyPrice(perKilowattHour.plus(other.perKilowattHour));
    }

    /** Returns so many times this. */
    public EnergyPrice times(double factor) {
        return new EnergyPrice(perKilowattHour.times(factor));
    }

    @Override
    public String what() {
        return "price of energy";
    }

    @Override
    public int compareTo(EnergyPrice other) {
        return perKilowattHour.compareTo(other.perKilowattHour);
    }

    /** Returns the price of a kWh with four significant digits, such as {@code 0.18 EUR/kWh}. */
    @Override
    public String toString() {
        Money price = perKilowattHour;
        return (Numbers.print(price.amount()) + " " + price.currency()).strip() + "/kWh";
    }
}

package headrace.units;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import java.util.Currency;
import java.util.List;

/**
 * An amount of money in one currency. Currencies do not mix: nothing here converts one into another, and an amount
 * whose currency was not said is one of its own.
 *
 * @param amount the amount, finite, of either sign
 * @param currency its code of three letters as in ISO 4217, or empty where none was said
 */
public record Money(double amount, String currency) implements Comparable<Money>, Operand {
    /** The currencies that are words after a number, as in {@code 120.EUR}; every other code is a text. */
    public static final List<String> CURRENCIES = List.of(
            "AUD", "BRL", "CAD", "CHF", "CNY", "CZK", "DKK", "EUR", "GBP", "INR", "JPY", "NOK", "NZD", "PLN", "SEK",
            "SGD", "USD", "ZAR");

    /** From here on the small change is not printed. */
    private static final double WHOLE_FROM = 1000;

    /** Refuses an amount that is not finite, with {@code IMPOSSIBLE_QUANTITY}. */
    public Money {
        if (!Double.isFinite(amount)) {
            throw new Refusal(
                    UnitProblem.IMPOSSIBLE_QUANTITY,
                    "An amount of money was given as " + amount,
                    "It must be a finite number",
                    "Look for a division by zero, or a blank cell of a file, that led to it");
        }
        amount += 0.0;
    }

    /**
     * Returns an amount in a currency of ISO 4217.
     *
     * @throws Refusal with {@code UNKNOWN_CURRENCY} if there is no such code
     */
    public static Money of(double amount, String currency) {
        List<String> codes = Currency.getAvailableCurrencies().stream()
                .map(Currency::getCurrencyCode)
                .toList();
        if (codes.contains(currency)) {
            return new Money(amount, currency);
        }
        List<String> near = Nearest.to(currency, codes);
        throw new Refusal(
                UnitProblem.UNKNOWN_CURRENCY,
                "Asked for money in '" + currency + "'",
                "A currency is a code of three capital letters of ISO 4217",
                Nearest.sentence(near, "Write it as EUR or USD"));
    }

    /**
     * Reads an amount and its currency, such as {@code 120 EUR}.
     *
     * @throws Refusal with {@code UNREADABLE_QUANTITY} or {@code UNKNOWN_CURRENCY}
     */
    public static Money parse(String text) {
        UnitText read = UnitText.of(text, "money", "EUR");
        return of(read.number(), read.unit());
    }

    /**
     * Returns the sum.
     *
     * @throws Refusal with {@code MEANINGLESS_ARITHMETIC} if the currencies differ
     */
    public Money plus(Money other) {
        return new Money(amount + matching(other).amount, currency);
    }

    /**
     * Returns the difference.
     *
     * @throws Refusal with {@code MEANINGLESS_ARITHMETIC} if the currencies differ
     */
    public Money minus(Money other) {
        return new Money(amount - matching(other).amount, currency);
    }

    /** Returns so many times this. */
    public Money times(double factor) {
        return new Money(amount * factor, currency);
    }

    /** Returns what a kWh costs if this much energy costs this. */
    public EnergyPrice over(Energy energy) {
        return new EnergyPrice(new Money(amount / energy.toKilowattHours(), currency));
    }

    /**
     * Returns how much energy this buys.
     *
     * @throws Refusal with {@code MEANINGLESS_ARITHMETIC} if the currencies differ
     */
    public Energy over(EnergyPrice price) {
        return Energy.kilowattHours(amount / matching(price.perKilowattHour()).amount);
    }

    /**
     * Returns this as a share of another amount.
     *
     * @throws Refusal with {@code MEANINGLESS_ARITHMETIC} if the currencies differ
     */
    public Ratio over(Money other) {
        return Ratio.of(amount / matching(other).amount);
    }

    private Money matching(Money other) {
        if (!currency.equals(other.currency)) {
            throw new Refusal(
                    UnitProblem.MEANINGLESS_ARITHMETIC,
                    "Asked to combine " + this.said() + " and " + other.said(),
                    "Amounts combine only in one currency",
                    "Convert one of them first, at a rate of your own");
        }
        return other;
    }

    private String said() {
        return currency.isEmpty() ? this + " of no currency" : toString();
    }

    @Override
    public String what() {
        return currency.isEmpty() ? "money of no currency" : "money in " + currency;
    }

    @Override
    public int compareTo(Money other) {
        return Double.compare(amount, matching(other).amount);
    }

    /** Returns the amount with two decimals below a thousand, whole from there on, and its currency. */
    @Override
    public String toString() {
        return (Numbers.decimals(amount, Math.abs(amount) < WHOLE_FROM ? 2 : 0) + " " + currency).strip();
    }
}

package headrace.units;

import headrace.problem.Refusal;

/**
 * An amount of money in one currency. Currencies do not mix: nothing here converts one into another.
 *
 * @param amount the amount, finite, of either sign
 * @param currency its code of three letters as in ISO 4217, or empty where none was said
 */
public record Money(double amount, String currency) implements Comparable<Money> {
    /** Refuses an amount that is not finite, with {@code IMPOSSIBLE_QUANTITY}. */
    public Money {
        if (!Double.isFinite(amount)) {
            throw new Refusal(
                    UnitProblem.IMPOSSIBLE_QUANTITY,
                    "An amount of money was given as " + amount,
                    "It must be a finite number",
                    "Check the cell or file it came from");
        }
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

    private Money matching(Money other) {
        if (!currency.equals(other.currency)) {
            throw new Refusal(
                    UnitProblem.MEANINGLESS_ARITHMETIC,
                    "Asked to combine " + this + " and " + other,
                    "Amounts combine only in one currency",
                    "Convert one of them first, at a rate of your own");
        }
        return other;
    }

    @Override
    public int compareTo(Money other) {
        return Double.compare(amount, matching(other).amount);
    }

    @Override
    public String toString() {
        return (Numbers.print(amount) + " " + currency).strip();
    }
}

package headrace.economics;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Ratio;

/**
 * How money later compares with money now: a nominal rate and the inflation it contains, so that the two never mix.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Rates a year.
 *   <dt>Limits
 *   <dd>Rates above −100 %. A nominal rate below inflation is computed and noted.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_RATE}.
 *   <dt>Source
 *   <dd>Real rate {@code (1+i)/(1+f) − 1}: NIST Handbook 135, 1995 (from memory).
 * </dl>
 *
 * @param nominal the rate in the money of each year
 * @param inflation by how much the price of everything rises in a year
 */
public record Discounting(Ratio nominal, Ratio inflation) {
    /** Refuses a rate of −100 % or less. */
    public Discounting {
        Factors.growth(nominal);
        Factors.growth(inflation);
    }

    /** Returns a rate that knows no inflation: all amounts are in today's money. */
    public static Discounting real(Ratio rate) {
        return new Discounting(rate, Ratio.ZERO);
    }

    /** Returns a rate in the money of each year, with the inflation that it contains. */
    public static Discounting nominal(Ratio rate, Ratio inflation) {
        return new Discounting(rate, inflation);
    }

    /** Returns the rate beyond inflation. The difference of the two is not it. */
    public Ratio real() {
        return Ratio.of(Factors.growth(nominal) / Factors.growth(inflation) - 1);
    }

    /** Returns what is unusual about it. */
    public Notes notes() {
        if (nominal.compareTo(inflation) >= 0) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                EconomicsProblem.DISCOUNT_BELOW_INFLATION,
                "The discount rate of " + nominal + " lies below the inflation of " + inflation + ", a real rate of "
                        + real() + ", so that a saving counts for more the later it comes");
    }

    @Override
    public String toString() {
        return inflation.value() == 0
                ? nominal + " a year"
                : nominal + " a year with " + inflation + " of inflation, " + real() + " real";
    }
}

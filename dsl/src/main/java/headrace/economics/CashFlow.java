package headrace.economics;

import headrace.numeric.Polynomial;
import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Money that flows at once and at the end of each year after.
 *
 * <dl>
 *   <dt>Units
 *   <dd>One currency; outlays below 0.
 *   <dt>Limits
 *   <dd>1 to 200 years. A payback is counted from year to year, in a straight line inside a year.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_YEARS} or {@code IMPOSSIBLE_RATE}.
 *   <dt>Source
 *   <dd>Textbook knowledge; NIST Handbook 135, 1995.
 * </dl>
 */
public final class CashFlow {
    /** An internal rate from here on is no rate of the trade: 1 comes back as 1e9. */
    private static final double GREATEST_GROWTH = 1e9;

    private final String currency;
    private final double[] amounts;

    private CashFlow(String currency, double[] amounts) {
        Factors.years(amounts.length - 1);
        for (double amount : amounts) {
            new Money(amount, currency);
        }
        this.currency = currency;
        this.amounts = amounts;
    }

    /**
     * Returns the flow of these amounts.
     *
     * @param currency its code, or empty
     * @param amounts what flows at once, then at the end of year 1, 2 and so on
     */
    public static CashFlow of(String currency, double... amounts) {
        return new CashFlow(currency, amounts.clone());
    }

    /** Returns the flow of these amounts: at once, then at the end of year 1, 2 and so on. */
    public static CashFlow of(List<Money> amounts) {
        Money sum = amounts.stream().reduce(Money::plus).orElse(new Money(0, ""));
        return new CashFlow(
                sum.currency(), amounts.stream().mapToDouble(Money::amount).toArray());
    }

    /** Returns how many years it runs. */
    public int years() {
        return amounts.length - 1;
    }

    /** Returns what flows at the end of a year; year 0 is now. */
    public Money in(int year) {
        if (year < 0 || year >= amounts.length) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_YEARS,
                    "Asked for year " + year,
                    "The cash flow runs from year 0, which is now, to year " + years(),
                    "Name one of these years");
        }
        return new Money(amounts[year], currency);
    }

    /** Returns the amounts, from now to the last year. */
    public List<Money> amounts() {
        return Arrays.stream(amounts)
                .mapToObj(each -> new Money(each, currency))
                .toList();
    }

    /** Returns the difference of two flows, year by year. */
    public CashFlow minus(CashFlow other) {
        List<Money> difference = new ArrayList<>();
        for (int year = 0; year < Math.max(amounts.length, other.amounts.length); year++) {
            Money mine = year < amounts.length ? in(year) : new Money(0, currency);
            difference.add(mine.minus(year < other.amounts.length ? other.in(year) : new Money(0, other.currency)));
        }
        return of(difference);
    }

    /** Returns what has come in by the end of each year, without discounting. */
    public List<Money> running() {
        return running(Ratio.ZERO);
    }

    /** Returns what has come in by the end of each year, each amount discounted to now. */
    public List<Money> running(Ratio rate) {
        double growth = Factors.growth(rate);
        List<Money> running = new ArrayList<>();
        double sum = 0;
        for (int year = 0; year < amounts.length; year++) {
            sum += amounts[year] * Math.pow(growth, -year);
            running.add(new Money(sum, currency));
        }
        return running;
    }

    /** Returns the net present value: {@code Σ Sₜ/(1+r)^t}. */
    public Money netPresentValue(Ratio rate) {
        return running(rate).get(years());
    }

    /** Returns what all of it is worth at the end of the last year: {@code Σ Sₜ·(1+r)^(n−t)}. */
    public Money futureValue(Ratio rate) {
        return netPresentValue(rate).times(Math.pow(Factors.growth(rate), years()));
    }

    /**
     * Returns when the running sum first comes from below 0 to 0, in a straight line inside the year; nothing if it
     * never does or was never below.
     *
     * @param rate at which each amount is discounted; 0 for an undiscounted payback
     */
    public Optional<Time> payback(Ratio rate) {
        List<Money> running = running(rate);
        for (int year = 1; year < amounts.length; year++) {
            double before = running.get(year - 1).amount();
            double after = running.get(year).amount();
            if (before < 0 && after >= 0) {
                return Optional.of(Time.years(year - 1 + before / (before - after)));
            }
        }
        return Optional.empty();
    }

    /** Returns whether the running sum falls below 0 again after it was paid back. */
    boolean losesAgain(Ratio rate) {
        boolean paid = false;
        for (Money sum : running(rate)) {
            if (paid && sum.amount() < 0) {
                return true;
            }
            paid |= sum.amount() >= 0;
        }
        return false;
    }

    /**
     * Returns every internal rate: {@code Σ Sₜ·x^t = 0} with {@code x = 1/(1+i)} for rates of 0 and more, and the same
     * in {@code 1+i} for those below, so that no power leaves the range of 0 to 1.
     */
    public InternalRates internalRates() {
        List<Ratio> rates = new ArrayList<>();
        double[] backward = new double[amounts.length];
        for (int i = 0; i < amounts.length; i++) {
            backward[i] = amounts[amounts.length - 1 - i];
        }
        for (double growth : Polynomial.of(backward).rootsIn(0, 1)) {
            if (growth > 1 / GREATEST_GROWTH && growth < 1) {
                rates.add(Ratio.of(growth - 1));
            }
        }
        double[] late = Polynomial.of(amounts).rootsIn(0, 1);
        for (int i = late.length - 1; i >= 0; i--) {
            if (late[i] > 1 / GREATEST_GROWTH) {
                rates.add(Ratio.of(1 / late[i] - 1));
            }
        }
        return new InternalRates(rates, signChanges());
    }

    private int signChanges() {
        int changes = 0;
        double last = 0;
        for (double amount : amounts) {
            if (amount * last < 0) {
                changes++;
            }
            last = amount == 0 ? last : Math.signum(amount);
        }
        return changes;
    }

    @Override
    public String toString() {
        return in(0) + " now, " + netPresentValue(Ratio.ZERO).minus(in(0)) + " in " + years() + " years after";
    }
}

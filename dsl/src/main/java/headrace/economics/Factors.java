package headrace.economics;

import headrace.problem.Refusal;
import headrace.units.Ratio;

/**
 * The factors of compound interest.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Rates a year, time in years, payments at the end of a year.
 *   <dt>Limits
 *   <dd>Rates above −100 %; a rate of 0 and one below are computed like any other.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_RATE} or {@code IMPOSSIBLE_YEARS}.
 *   <dt>Source
 *   <dd>NIST Handbook 135, Life-Cycle Costing Manual, 1995 (formulas from memory, values recomputed).
 * </dl>
 */
public final class Factors {
    private static final int MOST_YEARS = 200;

    private Factors() {}

    /** Returns the single present value, {@code (1+d)^−n}: what 1 after n years is worth now. */
    public static double singlePresentValue(Ratio rate, int years) {
        return Math.pow(growth(rate), -years(years));
    }

    /** Returns the uniform present value, {@code ((1+d)^n − 1)/(d·(1+d)^n)}: what 1 a year is worth now. */
    public static double uniformPresentValue(Ratio rate, int years) {
        return escalatedPresentValue(rate, Ratio.ZERO, years);
    }

    /** Returns the capital recovery factor, 1 over the uniform present value. */
    public static double capitalRecovery(Ratio rate, int years) {
        return 1 / uniformPresentValue(rate, years);
    }

    /**
     * Returns the modified uniform present value, {@code (1+e)/(d−e)·(1 − ((1+e)/(1+d))^n)}, and n where d = e: what 1
     * a year at today's price is worth now, if its price rises by e a year.
     */
    public static double escalatedPresentValue(Ratio rate, Ratio escalation, int years) {
        double step = growth(escalation) / growth(rate);
        return step * geometricSum(step, years(years));
    }

    /** Returns {@code 1 + x + … + x^(n−1)}, exact also where x is close to 1. */
    static double geometricSum(double x, int n) {
        double apart = x - 1;
        return apart == 0 ? n : Math.expm1(n * Math.log1p(apart)) / apart;
    }

    static double growth(Ratio rate) {
        if (rate.value() <= -1) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_RATE,
                    "Asked for a rate of " + rate + " a year",
                    "A rate must be above -100 %",
                    "State what is lost in a year as less than the whole");
        }
        return 1 + rate.value();
    }

    static int years(int years) {
        if (years < 1 || years > MOST_YEARS) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_YEARS,
                    "Asked for " + years + " years",
                    "A study runs over 1 to " + MOST_YEARS + " whole years",
                    "Common are 10 to 25 years, the life of the equipment");
        }
        return years;
    }
}

package headrace.economics;

import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Ratio;

/**
 * A cost over the life of something, in today's money. A credit, such as a rebate or a residual value, is below 0.
 *
 * @param name what is paid for
 * @param today what it costs at today's prices
 * @param timing when it is paid
 * @param escalation by how much its price rises each year beyond inflation
 */
public record CostItem(String name, Money today, Timing timing, Ratio escalation) {
    /**
     * When a cost is paid: at the end of the years {@code first}, {@code first + every} and so on; year 0 is now.
     *
     * @param first the first year
     * @param every after how many years again; 0 for once
     */
    public record Timing(int first, int every) {
        boolean in(int year) {
            return year == first || every > 0 && year > first && (year - first) % every == 0;
        }
    }

    /** Refuses a time that cannot be. */
    public CostItem {
        Factors.growth(escalation);
        if (timing.first() < 0 || timing.every() < 0) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_YEARS,
                    "Asked for '" + name + "' from year " + timing.first() + " every " + timing.every() + " years",
                    "Years count from 0, which is now, and intervals from 1",
                    "Correct the years");
        }
    }

    /** Returns a cost that is paid now. */
    public static CostItem now(String name, Money cost) {
        return new CostItem(name, cost, new Timing(0, 0), Ratio.ZERO);
    }

    /** Returns a cost that is paid at the end of every year. */
    public static CostItem yearly(String name, Money cost) {
        return new CostItem(name, cost, new Timing(1, 1), Ratio.ZERO);
    }

    /** Returns a cost that is paid at the end of every so many years. */
    public static CostItem every(String name, Money cost, int years) {
        return new CostItem(name, cost, new Timing(years, Math.max(1, years)), Ratio.ZERO);
    }

    /** Returns a cost that is paid once, at the end of a year. */
    public static CostItem inYear(String name, Money cost, int year) {
        return new CostItem(name, cost, new Timing(year, 0), Ratio.ZERO);
    }

    /** Returns this cost with a price that rises by more than inflation. */
    public CostItem escalating(Ratio beyondInflation) {
        return new CostItem(name, today, timing, beyondInflation);
    }

    /** Returns what it costs at the end of a year, in today's money. */
    double in(int year) {
        return timing.in(year) ? today.amount() * Math.pow(1 + escalation.value(), year) : 0;
    }

    /** Returns whether it is ever paid within so many years. */
    boolean fallsDueWithin(int years) {
        return timing.first() <= years;
    }

    /** Returns when it is paid, in words. */
    public String when() {
        if (timing.every() == 0) {
            return timing.first() == 0 ? "now" : "end of year " + timing.first();
        }
        return timing.every() == 1 && timing.first() == 1 ? "every year" : "every " + timing.every() + " years";
    }

    @Override
    public String toString() {
        return name + " " + today + ", " + when()
                + (escalation.value() == 0 ? "" : ", rising " + escalation + " a year beyond inflation");
    }
}

package headrace.economics.study;

import headrace.economics.EconomicsProblem;
import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Ratio;

/**
 * What all draws of a study of paybacks have in common.
 *
 * @param years how long the study runs, 2 to 100
 * @param upkeepGrowth by how much the upkeep grows each year
 * @param correlation between the price of energy and its rise, from −1 to 1
 * @param replacement a part that is replaced once
 */
public record PaybackModel(int years, Ratio upkeepGrowth, double correlation, PartReplacement replacement) {
    private static final int MOST_YEARS = 100;

    /**
     * A part that is replaced once.
     *
     * @param year at the end of which year; 0 for never
     * @param share its price today as a share of the extra first cost
     * @param growth by how much its price grows each year from now
     */
    public record PartReplacement(int year, Ratio share, Ratio growth) {
        /** Nothing is replaced. */
        public static final PartReplacement NONE = new PartReplacement(0, Ratio.ZERO, Ratio.ZERO);

        /** Returns what it costs at the end of its year, as a share of the extra first cost. */
        double costShare() {
            return share.value() * Math.pow(1 + growth.value(), year);
        }

        @Override
        public String toString() {
            return year == 0
                    ? "no replacement"
                    : "a replacement of " + share + " of the extra first cost at the end of year " + year
                            + ", its price rising " + growth + " a year";
        }
    }

    /** Refuses what cannot be. */
    public PaybackModel {
        boolean fits = years >= 2 && years <= MOST_YEARS && replacement.year() >= 0 && replacement.year() <= years;
        boolean sound = Math.abs(correlation) <= 1
                && upkeepGrowth.value() > -1
                && replacement.growth().value() > -1;
        if (!fits || !sound) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TERM,
                    "Asked for paybacks over " + years + " years with " + replacement + ", upkeep growing "
                            + upkeepGrowth + " a year and a correlation of " + correlation,
                    "A study runs over 2 to " + MOST_YEARS
                            + " years with the replacement inside them, grows by more than"
                            + " -100 % a year, and a correlation lies from -1 to 1",
                    "Correct the value that lies outside");
        }
    }

    /** Returns a model of so many years, in which upkeep does not grow and nothing is replaced. */
    public static PaybackModel over(int years) {
        return new PaybackModel(years, Ratio.ZERO, 0, PartReplacement.NONE);
    }

    @Override
    public String toString() {
        return years + " years, upkeep rising " + upkeepGrowth + " a year, price and its rise correlated by "
                + Numbers.print(correlation) + ", " + replacement;
    }
}

package headrace.economics.tariff;

import headrace.economics.EconomicsProblem;
import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;

/**
 * A charge for the highest demand of a month.
 *
 * <p>The demand is the highest mean over windows that follow one another from the full hour on, not the highest moment.
 * With a ratchet the billed demand does not fall below a share of the highest demand of the months before. A year is
 * taken for one of many that are alike: the months before January are those of the same year. Common practice, no
 * source.
 *
 * @param perKilowatt what 1 kW costs in a month
 * @param window over how long the mean is taken, 15, 30 or 60 min
 * @param ratchet the share of the highest earlier demand that is billed at least; 0 for none
 * @param months how many months the ratchet looks back
 */
public record DemandCharge(Money perKilowatt, Time window, Ratio ratchet, int months) {
    private static final int HOUR = 3600;
    private static final int MOST_MONTHS = 11;

    /** Refuses a window that does not divide an hour and a ratchet that cannot be. */
    public DemandCharge {
        double seconds = window.seconds();
        boolean divides = seconds >= 60 && seconds <= HOUR && HOUR % seconds == 0;
        boolean ratcheted = ratchet.value() >= 0 && ratchet.value() <= 1 && months >= 0 && months <= MOST_MONTHS;
        if (!divides || !ratcheted) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TARIFF,
                    "Asked for a demand charge over " + window + " with a ratchet of " + ratchet + " over " + months
                            + " months",
                    "The window divides an hour, from 1 to 60 min; a ratchet is 0 to 100 % and looks back 0 to "
                            + MOST_MONTHS + " months",
                    "Common are windows of 15 and 30 min, and ratchets of 50 to 90 % over 11 months");
        }
    }

    /** Returns a charge without a ratchet. */
    public static DemandCharge of(Money perKilowatt, Time window) {
        return new DemandCharge(perKilowatt, window, Ratio.ZERO, 0);
    }

    /** Returns this charge with a ratchet over the 11 months before. */
    public DemandCharge ratcheted(Ratio share) {
        return new DemandCharge(perKilowatt, window, share, MOST_MONTHS);
    }

    /** Returns the demands that are billed for the peaks of the months of a year. */
    double[] billed(double[] peaks) {
        double[] billed = peaks.clone();
        for (int month = 0; month < peaks.length; month++) {
            for (int back = 1; back <= Math.min(months, peaks.length - 1); back++) {
                double earlier = peaks[Math.floorMod(month - back, peaks.length)];
                billed[month] = Math.max(billed[month], ratchet.value() * earlier);
            }
        }
        return billed;
    }

    @Override
    public String toString() {
        return "demand " + perKilowatt + " for 1 kW a month, highest mean over " + window
                + (ratchet.value() == 0
                        ? ""
                        : ", at least " + ratchet + " of the highest of the " + months + " months before");
    }
}

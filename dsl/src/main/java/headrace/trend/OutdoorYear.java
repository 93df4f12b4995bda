package headrace.trend;

import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Temperature;
import headrace.units.Time;
import java.util.List;

/**
 * The outdoor temperatures of a year: how many hours at which.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities.
 *   <dt>Limits
 *   <dd>Up to 8784 hours in all.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_TREND_CHOICE}.
 *   <dt>Source
 *   <dd>The user's.
 * </dl>
 *
 * @param bins the temperatures in any order
 */
public record OutdoorYear(List<Bin> bins) {
    private static final double MOST = 8784 * (1 + 1e-9);

    /**
     * Hours at a temperature.
     *
     * @param temperature the middle of the bin
     * @param hours how long in the year
     */
    public record Bin(Temperature temperature, Time hours) {}

    /** Refuses a year without hours, or with more than one has. */
    public OutdoorYear {
        bins = List.copyOf(bins);
        double hours = bins.stream().mapToDouble(bin -> bin.hours().toHours()).sum();
        boolean negative = bins.stream().anyMatch(bin -> bin.hours().seconds() < 0);
        if (negative || !(hours > 0 && hours <= MOST)) {
            throw new Refusal(
                    TrendProblem.IMPOSSIBLE_TREND_CHOICE,
                    "Asked for a year of outdoor temperatures with " + Numbers.print(hours) + " h in all",
                    "A year has more than 0 and up to 8784 hours, none of its bins below 0",
                    "Write it as [[-5.degC, 120.h], [0.degC, 900.h], …]");
        }
    }

    /** Returns all hours together. */
    public Time hours() {
        return bins.stream().map(Bin::hours).reduce(Time.ZERO, Time::plus);
    }

    @Override
    public String toString() {
        return bins.size() + " bins of outdoor temperature, " + hours() + " in all";
    }
}

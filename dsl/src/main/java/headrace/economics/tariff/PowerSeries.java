package headrace.economics.tariff;

import headrace.economics.EconomicsProblem;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Power;
import headrace.units.Time;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;

/**
 * The wire power of a calendar year, as means over intervals that follow one another without a gap.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Powers at the wire; intervals of 1 min to 1 h that divide an hour.
 *   <dt>Limits
 *   <dd>From 1 January, 0 o'clock, to the end of the year, in local standard time: no hour is lost or doubled in spring
 *       or autumn.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_POWER_SERIES}.
 *   <dt>Source
 *   <dd>Named by the series' basis.
 * </dl>
 */
public final class PowerSeries implements Traced {
    private static final int HOUR = 3600;

    private final String name;
    private final int year;
    private final int seconds;
    private final double[] watts;
    private final Notes notes;
    private final Basis basis;

    private PowerSeries(String name, int year, int seconds, double[] watts, Traced source) {
        this.name = name;
        this.year = year;
        this.seconds = seconds;
        this.watts = watts;
        this.notes = source.notes();
        this.basis = source.basis()
                .with("year " + year + " in local standard time, powers as means over " + Time.seconds(seconds));
    }

    /**
     * Returns the series of these powers.
     *
     * @param name what it is called
     * @param year the calendar year, which says on which day of the week it begins
     * @param watts the powers in W, for all of the year, in equal intervals
     * @param source what the powers rest on
     */
    public static PowerSeries of(String name, int year, double[] watts, Traced source) {
        long span = (long) HOUR * 24 * LocalDate.of(year, 1, 1).lengthOfYear();
        long interval = watts.length == 0 ? 0 : span / watts.length;
        boolean divides = interval >= 60 && interval <= HOUR && interval * watts.length == span && HOUR % interval == 0;
        boolean finite = Arrays.stream(watts).allMatch(Double::isFinite);
        if (!divides || !finite) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_POWER_SERIES,
                    "Asked for the powers '" + name + "' of the year " + year + " with " + watts.length + " values"
                            + (finite ? "" : ", some of which are no finite number"),
                    "A year of " + span / HOUR
                            + " h has one value for each interval, and the interval divides an hour: " + span / HOUR
                            + " values by the hour, " + 4 * span / HOUR + " by the quarter of an hour",
                    "Fill the gaps first, or name another year");
        }
        return new PowerSeries(name, year, (int) interval, watts.clone(), source);
    }

    /** Returns what the series is called. */
    public String name() {
        return name;
    }

    /** Returns the calendar year. */
    public int year() {
        return year;
    }

    /** Returns the length of an interval. */
    public Time interval() {
        return Time.seconds(seconds);
    }

    /** Returns how many intervals there are. */
    public int size() {
        return watts.length;
    }

    /** Returns when an interval begins. */
    public LocalDateTime start(int interval) {
        return LocalDate.of(year, 1, 1).atStartOfDay().plusSeconds((long) interval * seconds);
    }

    /** Returns the mean power of an interval. */
    public Power power(int interval) {
        return Power.watts(watts[interval]);
    }

    /** Returns the energy of the year. */
    public Energy energy() {
        return Energy.joules(Arrays.stream(watts).sum() * seconds);
    }

    /** Returns the greatest power of an interval. */
    public Power greatest() {
        return Power.watts(Arrays.stream(watts).max().orElseThrow());
    }

    double watts(int interval) {
        return watts[interval];
    }

    int seconds() {
        return seconds;
    }

    @Override
    public Notes notes() {
        return notes;
    }

    @Override
    public Basis basis() {
        return basis;
    }

    @Override
    public String toString() {
        return name + ", " + year + ": " + energy() + ", " + greatest() + " at most";
    }
}

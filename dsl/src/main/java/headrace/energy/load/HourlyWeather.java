package headrace.energy.load;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Temperature;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;

/**
 * The outdoor temperature of every hour of a year.
 *
 * <dl>
 *   <dt>Units
 *   <dd>°C inside. Times are local, without a change of clock.
 *   <dt>Limits
 *   <dd>8760 or 8784 hours in a row, −90 to 60 °C.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_YEAR} or {@code WEATHER_OUT_OF_RANGE}.
 *   <dt>Source
 *   <dd>Named by the basis; the range is a little more than what was ever read on earth.
 * </dl>
 */
public final class HourlyWeather implements Traced {
    /** The coldest that is taken. */
    public static final Temperature COLDEST = Temperature.celsius(-90);

    /** The warmest that is taken. */
    public static final Temperature WARMEST = Temperature.celsius(60);

    private final String name;
    private final LocalDateTime start;
    private final double[] celsius;
    private final Notes notes;
    private final Basis basis;

    private HourlyWeather(String name, LocalDateTime start, double[] celsius, Notes notes, Basis basis) {
        this.name = name;
        this.start = start;
        this.celsius = celsius;
        this.notes = notes;
        this.basis = basis;
    }

    /**
     * Returns the weather of a year.
     *
     * @param name where it is
     * @param start when its first hour begins
     * @param outdoor the temperature in each hour
     * @param basis where it comes from
     */
    public static HourlyWeather of(String name, LocalDateTime start, List<Temperature> outdoor, Basis basis) {
        if (!HourlyLoad.YEARS.contains(outdoor.size())) {
            throw new Refusal(
                    LoadProblem.IMPOSSIBLE_YEAR,
                    "Asked for the weather of '" + name + "' with " + outdoor.size() + " hours",
                    "A year has 8760 hours, or 8784 with a leap day",
                    "Give every hour once");
        }
        for (Temperature each : outdoor) {
            if (each.compareTo(COLDEST) < 0 || each.compareTo(WARMEST) > 0) {
                throw new Refusal(
                        LoadProblem.WEATHER_OUT_OF_RANGE,
                        "Asked for an outdoor temperature of " + each + " at '" + name + "'",
                        "It lies between " + COLDEST + " and " + WARMEST,
                        "Check the unit, and what stands for a missing reading");
            }
        }
        double[] own = outdoor.stream().mapToDouble(Temperature::toCelsius).toArray();
        return new HourlyWeather(name, start, own, Notes.NONE, basis);
    }

    /** Returns this weather with what its reader had to say. */
    public HourlyWeather with(Notes more) {
        return new HourlyWeather(name, start, celsius, notes.and(more), basis);
    }

    /** Returns where it is. */
    public String name() {
        return name;
    }

    /** Returns when its first hour begins. */
    public LocalDateTime start() {
        return start;
    }

    /** Returns how many hours it has. */
    public int hours() {
        return celsius.length;
    }

    /** Returns the temperature in an hour, counted from 0. */
    public Temperature at(int hour) {
        return Temperature.celsius(celsius[hour]);
    }

    /** Returns the temperature in °C in an hour. */
    double celsiusAt(int hour) {
        return celsius[hour];
    }

    /** Returns the coldest hour's temperature. */
    public Temperature coldest() {
        return Temperature.celsius(Arrays.stream(celsius).min().orElseThrow());
    }

    /** Returns the warmest hour's temperature. */
    public Temperature warmest() {
        return Temperature.celsius(Arrays.stream(celsius).max().orElseThrow());
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
        return name + ": " + celsius.length + " hours, " + coldest() + " to " + warmest();
    }
}

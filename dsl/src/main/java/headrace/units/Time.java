package headrace.units;

import java.util.List;

/**
 * A span of time.
 *
 * <p>The year is one of 365 days, 8760 h.
 */
public final class Time extends Amount<Time> {
    /** The units of a time, the SI unit first. */
    public static final Kind<Time> KIND = new Kind<>(
            "time",
            Time.class,
            Time::new,
            List.of(
                    Unit.of("s", "s", 1),
                    Unit.of("minute", "min", 60, "minutes"),
                    Unit.of("h", "h", 3600, "hr", "hour", "hours"),
                    Unit.of("day", "d", 86400, "days"),
                    Unit.of("year", "a", 8760 * 3600.0, "yr", "years")),
            "h",
            "h");

    /** No time. */
    public static final Time ZERO = new Time(0);

    private Time(double si) {
        super(si);
    }

    /** Returns the time of so many s. */
    public static Time seconds(double value) {
        return new Time(value);
    }

    /** Returns the time of so many min. */
    public static Time minutes(double value) {
        return KIND.of(value, "minute");
    }

    /** Returns the time of so many h. */
    public static Time hours(double value) {
        return KIND.of(value, "h");
    }

    /** Returns the time of so many d. */
    public static Time days(double value) {
        return KIND.of(value, "day");
    }

    /** Returns the time of so many a. */
    public static Time years(double value) {
        return KIND.of(value, "year");
    }

    /** Returns this time in s. */
    public double seconds() {
        return si();
    }

    /** Returns this time in min. */
    public double toMinutes() {
        return in("minute");
    }

    /** Returns this time in h. */
    public double toHours() {
        return in("h");
    }

    /** Returns this time in d. */
    public double toDays() {
        return in("day");
    }

    /** Returns this time in a. */
    public double toYears() {
        return in("year");
    }

    @Override
    public Kind<Time> kind() {
        return KIND;
    }
}

package headrace.units;

import java.util.List;

/** A speed of rotation. */
public final class Speed extends Amount<Speed> {
    /** The units of a speed, the SI unit first. */
    public static final Kind<Speed> KIND = new Kind<>(
            "speed",
            Speed.class,
            Speed::new,
            List.of(
                    Unit.of("radps", "rad/s", 1),
                    Unit.of("rpm", "rpm", 2 * Math.PI / 60, "RPM", "r/min", "rev/min", "1/min", "min-1"),
                    Unit.of("rps", "r/s", 2 * Math.PI, "rev/s", "1/s", "s-1")),
            "rpm",
            "rpm");

    /** No speed. */
    public static final Speed ZERO = new Speed(0);

    private Speed(double si) {
        super(si);
    }

    /** Returns the speed of so many rad/s. */
    public static Speed radiansPerSecond(double value) {
        return new Speed(value);
    }

    /** Returns the speed of so many rpm. */
    public static Speed revolutionsPerMinute(double value) {
        return KIND.of(value, "rpm");
    }

    /** Returns the speed of so many r/s. */
    public static Speed revolutionsPerSecond(double value) {
        return KIND.of(value, "rps");
    }

    /** Returns this speed in rad/s. */
    public double radiansPerSecond() {
        return si();
    }

    /** Returns this speed in rpm. */
    public double toRevolutionsPerMinute() {
        return in("rpm");
    }

    /** Returns this speed in r/s. */
    public double toRevolutionsPerSecond() {
        return in("rps");
    }

    @Override
    public Kind<Speed> kind() {
        return KIND;
    }
}

package headrace.units;

import java.util.List;

/** A velocity. */
public final class Velocity extends Amount<Velocity> {
    /** The units of a velocity, the SI unit first. */
    public static final Kind<Velocity> KIND = new Kind<>(
            "velocity",
            Velocity.class,
            Velocity::new,
            List.of(Unit.of("mps", "m/s", 1), Unit.of("ftps", "ft/s", 0.3048, "fps")),
            "mps",
            "ftps");

    /** No velocity. */
    public static final Velocity ZERO = new Velocity(0);

    private Velocity(double si) {
        super(si);
    }

    /** Returns the velocity of so many m/s. */
    public static Velocity metresPerSecond(double value) {
        return new Velocity(value);
    }

    /** Returns the velocity of so many ft/s. */
    public static Velocity feetPerSecond(double value) {
        return KIND.of(value, "ftps");
    }

    /** Returns this velocity in m/s. */
    public double metresPerSecond() {
        return si();
    }

    /** Returns this velocity in ft/s. */
    public double toFeetPerSecond() {
        return in("ftps");
    }

    /** Returns the flow at this mean velocity through an area. */
    public Flow times(Area area) {
        return Flow.cubicMetresPerSecond(si() * area.si());
    }

    /** Returns how far this velocity goes in a time. */
    public Length times(Time time) {
        return Length.metres(si() * time.si());
    }

    @Override
    public Kind<Velocity> kind() {
        return KIND;
    }
}

package headrace.units;

import java.util.List;

/**
 * A length.
 *
 * <p>The foot is 0.3048 m, exactly.
 */
public final class Length extends Amount<Length> {
    /** The units of a length, the SI unit first. */
    public static final Kind<Length> KIND = new Kind<>(
            "length",
            Length.class,
            Length::new,
            List.of(
                    Unit.of("m", "m", 1),
                    Unit.of("mm", "mm", 1e-3),
                    Unit.of("cm", "cm", 1e-2),
                    Unit.of("km", "km", 1e3),
                    Unit.of("inch", "in", 0.0254, "inch", "inches"),
                    Unit.of("ft", "ft", 0.3048, "foot", "feet")),
            "m",
            "ft");

    /** No length. */
    public static final Length ZERO = new Length(0);

    private Length(double si) {
        super(si);
    }

    /** Returns the length of so many m. */
    public static Length metres(double value) {
        return new Length(value);
    }

    /** Returns the length of so many mm. */
    public static Length millimetres(double value) {
        return KIND.of(value, "mm");
    }

    /** Returns the length of so many cm. */
    public static Length centimetres(double value) {
        return KIND.of(value, "cm");
    }

    /** Returns the length of so many km. */
    public static Length kilometres(double value) {
        return KIND.of(value, "km");
    }

    /** Returns the length of so many in. */
    public static Length inches(double value) {
        return KIND.of(value, "inch");
    }

    /** Returns the length of so many ft. */
    public static Length feet(double value) {
        return KIND.of(value, "ft");
    }

    /** Returns this length in m. */
    public double metres() {
        return si();
    }

    /** Returns this length in mm. */
    public double toMillimetres() {
        return in("mm");
    }

    /** Returns this length in cm. */
    public double toCentimetres() {
        return in("cm");
    }

    /** Returns this length in km. */
    public double toKilometres() {
        return in("km");
    }

    /** Returns this length in in. */
    public double toInches() {
        return in("inch");
    }

    /** Returns this length in ft. */
    public double toFeet() {
        return in("ft");
    }

    /** Returns the pressure difference that a column of this height is in a liquid under standard gravity. */
    public Pressure pressureOf(Dense liquid) {
        return Pressure.pascals(si() * liquid.density().si() * Gravity.STANDARD);
    }

    /** Returns the area of a rectangle with these sides. */
    public Area times(Length other) {
        return Area.squareMetres(si() * other.si());
    }

    /** Returns the velocity that goes this far in a time. */
    public Velocity over(Time time) {
        return Velocity.metresPerSecond(si() / time.si());
    }

    @Override
    public Kind<Length> kind() {
        return KIND;
    }
}

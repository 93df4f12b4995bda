package headrace.units;

import java.util.List;

/**
 * A head: the energy per weight of the liquid that a pump adds or a circuit takes, as a height of that liquid.
 *
 * <p>Not a pressure: a pressure becomes a head only in a liquid.
 */
public final class Head extends Amount<Head> {
    /** The units of a head, the SI unit first. */
    public static final Kind<Head> KIND = new Kind<>(
            "head",
            Head.class,
            Head::new,
            List.of(
                    Unit.of("mHead", "m", 1, "m head", "m of liquid"),
                    Unit.of("ftHead", "ft", 0.3048, "foot", "feet", "ft head")),
            "mHead",
            "ftHead");

    /** No head. */
    public static final Head ZERO = new Head(0);

    private Head(double si) {
        super(si);
    }

    /** Returns the head of so many m. */
    public static Head metres(double value) {
        return new Head(value);
    }

    /** Returns the head of so many ft. */
    public static Head feet(double value) {
        return KIND.of(value, "ftHead");
    }

    /** Returns this head in m. */
    public double metres() {
        return si();
    }

    /** Returns this head in ft. */
    public double toFeet() {
        return in("ftHead");
    }

    /** Returns the pressure difference that this head is in a liquid under standard gravity. */
    public Pressure pressureOf(Dense liquid) {
        return Pressure.pascals(si() * liquid.density().si() * Gravity.STANDARD);
    }

    @Override
    public Kind<Head> kind() {
        return KIND;
    }
}

package headrace.units;

import java.util.List;

/**
 * A pressure difference.
 *
 * <p>Neither gauge nor absolute: the difference of two pressures, and what can be added to either.
 */
public final class Pressure extends Amount<Pressure> {
    /** The units of a pressure difference, the SI unit first. */
    public static final Kind<Pressure> KIND = new Kind<>(
            "pressure difference",
            Pressure.class,
            Pressure::new,
            List.of(
                    Unit.of("Pa", "Pa", 1),
                    Unit.of("kPa", "kPa", 1e3),
                    Unit.of("bar", "bar", 1e5),
                    Unit.of("MPa", "MPa", 1e6),
                    Unit.of("psi", "psi", 0.45359237 * 9.80665 / (0.0254 * 0.0254))),
            "kPa",
            "psi");

    /** No pressure difference. */
    public static final Pressure ZERO = new Pressure(0);

    private Pressure(double si) {
        super(si);
    }

    /** Returns the pressure difference of so many Pa. */
    public static Pressure pascals(double value) {
        return new Pressure(value);
    }

    /** Returns the pressure difference of so many kPa. */
    public static Pressure kilopascals(double value) {
        return KIND.of(value, "kPa");
    }

    /** Returns the pressure difference of so many bar. */
    public static Pressure bars(double value) {
        return KIND.of(value, "bar");
    }

    /** Returns the pressure difference of so many MPa. */
    public static Pressure megapascals(double value) {
        return KIND.of(value, "MPa");
    }

    /** Returns the pressure difference of so many psi. */
    public static Pressure poundsPerSquareInch(double value) {
        return KIND.of(value, "psi");
    }

    /** Returns this pressure difference in Pa. */
    public double pascals() {
        return si();
    }

    /** Returns this pressure difference in kPa. */
    public double toKilopascals() {
        return in("kPa");
    }

    /** Returns this pressure difference in bar. */
    public double toBars() {
        return in("bar");
    }

    /** Returns this pressure difference in MPa. */
    public double toMegapascals() {
        return in("MPa");
    }

    /** Returns this pressure difference in psi. */
    public double toPoundsPerSquareInch() {
        return in("psi");
    }

    /** Returns the head that this pressure difference is in a liquid: a column of it under standard gravity. */
    public Head headOf(Dense liquid) {
        return Head.metres(si() / (liquid.density().si() * Gravity.STANDARD));
    }

    @Override
    public Kind<Pressure> kind() {
        return KIND;
    }
}

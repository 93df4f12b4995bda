package headrace.units;

import java.util.List;

/**
 * A pressure difference.
 *
 * <p>Neither gauge nor absolute: the difference of two pressures, and what can be added to either. The columns of water
 * are of conventional water, 1000 kg/m³ under standard gravity, whatever the liquid in the pipe; the pound of force is
 * that of 0.45359237 kg.
 */
public final class Pressure extends Amount<Pressure> {
    /** The units of a pressure difference, the SI unit first. */
    public static final Kind<Pressure> KIND = new Kind<>(
            "pressure difference",
            Pressure.class,
            Pressure::new,
            List.of(
                    Unit.of("Pa", "Pa", 1),
                    Unit.of("kPa", "kPa", 1e3, "KPA"),
                    Unit.of("bar", "bar", 1e5, "Bar", "BAR"),
                    Unit.of("mbar", "mbar", 1e2),
                    Unit.of("MPa", "MPa", 1e6),
                    Unit.of("psi", "psi", 0.45359237 * 9.80665 / (0.0254 * 0.0254), "PSI", "psid"),
                    Unit.of("mH2O", "mH2O", 9806.65, "mWC", "mWG"),
                    Unit.of("ftH2O", "ftH2O", 9806.65 * 0.3048, "ft WC", "ft WG"),
                    Unit.of("inH2O", "inH2O", 9806.65 * 0.0254, "in WC", "in WG")),
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

    /** Returns the pressure difference of so many mbar. */
    public static Pressure millibars(double value) {
        return KIND.of(value, "mbar");
    }

    /** Returns the pressure difference of so many m of conventional water. */
    public static Pressure metresOfWater(double value) {
        return KIND.of(value, "mH2O");
    }

    /** Returns the pressure difference of so many ft of conventional water. */
    public static Pressure feetOfWater(double value) {
        return KIND.of(value, "ftH2O");
    }

    /** Returns the pressure difference of so many in of conventional water. */
    public static Pressure inchesOfWater(double value) {
        return KIND.of(value, "inH2O");
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

    /** Returns this pressure difference in mbar. */
    public double toMillibars() {
        return in("mbar");
    }

    /** Returns this pressure difference in m of conventional water. */
    public double toMetresOfWater() {
        return in("mH2O");
    }

    /** Returns this pressure difference in ft of conventional water. */
    public double toFeetOfWater() {
        return in("ftH2O");
    }

    /** Returns this pressure difference in in of conventional water. */
    public double toInchesOfWater() {
        return in("inH2O");
    }

    /** Returns the head that this pressure difference is in a liquid: a column of it under standard gravity. */
    public Head headOf(Dense liquid) {
        return Head.metres(si() / (liquid.density().si() * Gravity.STANDARD));
    }

    /** Returns the hydraulic power of a flow that is lifted by this. */
    public Power times(Flow flow) {
        return Power.watts(si() * flow.si());
    }

    @Override
    public Kind<Pressure> kind() {
        return KIND;
    }
}

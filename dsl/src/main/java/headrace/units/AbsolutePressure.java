package headrace.units;

import java.util.List;

/**
 * A pressure above vacuum.
 *
 * <p>It becomes a gauge pressure only with the pressure of the air.
 */
public final class AbsolutePressure extends Scaled<AbsolutePressure> {
    /** The units of an absolute pressure, the SI unit first. */
    public static final Kind<AbsolutePressure> KIND = new Kind<>(
            "absolute pressure",
            AbsolutePressure.class,
            AbsolutePressure::new,
            List.of(
                    Unit.of("PaAbs", "Pa abs", 1),
                    Unit.of("kPaAbs", "kPa abs", 1e3, "kPa a", "kPaa"),
                    Unit.of("barAbs", "bar abs", 1e5, "bar a", "bara"),
                    Unit.of("psia", "psi abs", 0.45359237 * 9.80665 / (0.0254 * 0.0254), "PSIA")),
            "kPaAbs",
            "psia");

    /** No absolute pressure. */
    public static final AbsolutePressure ZERO = new AbsolutePressure(0);

    private AbsolutePressure(double si) {
        super(si);
    }

    /** Returns the absolute pressure of so many Pa abs. */
    public static AbsolutePressure pascals(double value) {
        return new AbsolutePressure(value);
    }

    /** Returns the absolute pressure of so many kPa abs. */
    public static AbsolutePressure kilopascals(double value) {
        return KIND.of(value, "kPaAbs");
    }

    /** Returns the absolute pressure of so many bar abs. */
    public static AbsolutePressure bars(double value) {
        return KIND.of(value, "barAbs");
    }

    /** Returns the absolute pressure of so many psi abs. */
    public static AbsolutePressure poundsPerSquareInch(double value) {
        return KIND.of(value, "psia");
    }

    /** Returns this absolute pressure in Pa abs. */
    public double pascals() {
        return si();
    }

    /** Returns this absolute pressure in kPa abs. */
    public double toKilopascals() {
        return in("kPaAbs");
    }

    /** Returns this absolute pressure in bar abs. */
    public double toBars() {
        return in("barAbs");
    }

    /** Returns this absolute pressure in psi abs. */
    public double toPoundsPerSquareInch() {
        return in("psia");
    }

    /** Returns the pressure that much higher. */
    public AbsolutePressure plus(Pressure rise) {
        return make(si() + rise.si());
    }

    /** Returns the pressure that much lower. */
    public AbsolutePressure minus(Pressure drop) {
        return make(si() - drop.si());
    }

    /** Returns how much higher this is than another. */
    public Pressure minus(AbsolutePressure other) {
        return Pressure.pascals(si() - other.si());
    }

    /** Returns this absolute pressure as a gauge pressure, with the pressure of the air around. */
    public GaugePressure toGauge(AbsolutePressure air) {
        return GaugePressure.pascals(si() - air.si());
    }

    @Override
    public Kind<AbsolutePressure> kind() {
        return KIND;
    }
}

package headrace.units;

import java.util.List;

/**
 * A pressure above that of the surrounding air.
 *
 * <p>It becomes absolute only with the pressure of the air.
 */
public final class GaugePressure extends Scaled<GaugePressure> {
    /** The units of a gauge pressure, the SI unit first. */
    public static final Kind<GaugePressure> KIND = new Kind<>(
            "gauge pressure",
            GaugePressure.class,
            GaugePressure::new,
            List.of(
                    Unit.of("PaGauge", "Pa gauge", 1),
                    Unit.of("kPaGauge", "kPa gauge", 1e3, "kPa g", "kPag"),
                    Unit.of("barGauge", "bar gauge", 1e5, "bar g", "barg"),
                    Unit.of("psig", "psi gauge", 0.45359237 * 9.80665 / (0.0254 * 0.0254), "PSIG")),
            "kPaGauge",
            "psig");

    /** No gauge pressure. */
    public static final GaugePressure ZERO = new GaugePressure(0);

    private GaugePressure(double si) {
        super(si);
    }

    /** Returns the gauge pressure of so many Pa gauge. */
    public static GaugePressure pascals(double value) {
        return new GaugePressure(value);
    }

    /** Returns the gauge pressure of so many kPa gauge. */
    public static GaugePressure kilopascals(double value) {
        return KIND.of(value, "kPaGauge");
    }

    /** Returns the gauge pressure of so many bar gauge. */
    public static GaugePressure bars(double value) {
        return KIND.of(value, "barGauge");
    }

    /** Returns the gauge pressure of so many psi gauge. */
    public static GaugePressure poundsPerSquareInch(double value) {
        return KIND.of(value, "psig");
    }

    /** Returns this gauge pressure in Pa gauge. */
    public double pascals() {
        return si();
    }

    /** Returns this gauge pressure in kPa gauge. */
    public double toKilopascals() {
        return in("kPaGauge");
    }

    /** Returns this gauge pressure in bar gauge. */
    public double toBars() {
        return in("barGauge");
    }

    /** Returns this gauge pressure in psi gauge. */
    public double toPoundsPerSquareInch() {
        return in("psig");
    }

    /** Returns the pressure that much higher. */
    public GaugePressure plus(Pressure rise) {
        return make(si() + rise.si());
    }

    /** Returns the pressure that much lower. */
    public GaugePressure minus(Pressure drop) {
        return make(si() - drop.si());
    }

    /** Returns how much higher this is than another. */
    public Pressure minus(GaugePressure other) {
        return Pressure.pascals(si() - other.si());
    }

    /** Returns this gauge pressure as an absolute one, with the pressure of the air around. */
    public AbsolutePressure toAbsolute(AbsolutePressure air) {
        return AbsolutePressure.pascals(si() + air.si());
    }

    @Override
    public Kind<GaugePressure> kind() {
        return KIND;
    }
}

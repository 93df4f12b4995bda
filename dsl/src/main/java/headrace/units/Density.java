package headrace.units;

import java.util.List;

/** A density. */
public final class Density extends Amount<Density> implements Dense {
    /** The units of a density, the SI unit first. */
    public static final Kind<Density> KIND = new Kind<>(
            "density",
            Density.class,
            Density::new,
            List.of(
                    Unit.of("kgpm3", "kg/m³", 1),
                    Unit.of("kgpl", "kg/L", 1e3, "kg/l", "kg/dm3", "g/cm3", "g/mL"),
                    Unit.of("lbpft3", "lb/ft³", 0.45359237 / (0.3048 * 0.3048 * 0.3048))),
            "kgpm3",
            "lbpft3");

    /** No density. */
    public static final Density ZERO = new Density(0);

    private Density(double si) {
        super(si);
    }

    /** Returns the density of so many kg/m³. */
    public static Density kilogramsPerCubicMetre(double value) {
        return new Density(value);
    }

    /** Returns the density of so many lb/ft³. */
    public static Density poundsPerCubicFoot(double value) {
        return KIND.of(value, "lbpft3");
    }

    /** Returns the density of so many kg/L. */
    public static Density kilogramsPerLitre(double value) {
        return KIND.of(value, "kgpl");
    }

    /** Returns this density in kg/m³. */
    public double kilogramsPerCubicMetre() {
        return si();
    }

    /** Returns this density in lb/ft³. */
    public double toPoundsPerCubicFoot() {
        return in("lbpft3");
    }

    /** Returns this density in kg/L. */
    public double toKilogramsPerLitre() {
        return in("kgpl");
    }

    /** Returns this, so that a density does where a liquid is asked for. */
    @Override
    public Density density() {
        return this;
    }

    @Override
    public Kind<Density> kind() {
        return KIND;
    }
}

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
                    Unit.of("kgpm3", "kg/m³", 1, "kg/m3"),
                    Unit.of("lbpft3", "lb/ft³", 0.45359237 / (0.3048 * 0.3048 * 0.3048), "lb/ft3")),
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

    /** Returns this density in kg/m³. */
    public double kilogramsPerCubicMetre() {
        return si();
    }

    /** Returns this density in lb/ft³. */
    public double toPoundsPerCubicFoot() {
        return in("lbpft3");
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

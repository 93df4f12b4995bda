package headrace.units;

import java.util.List;

/** A kinematic viscosity: dynamic viscosity over density. */
public final class KinematicViscosity extends Amount<KinematicViscosity> {
    /** The units of a kinematic viscosity, the SI unit first. */
    public static final Kind<KinematicViscosity> KIND = new Kind<>(
            "kinematic viscosity",
            KinematicViscosity.class,
            KinematicViscosity::new,
            List.of(
                    Unit.of("m2ps", "m²/s", 1),
                    Unit.of("mm2ps", "mm²/s", 1e-6),
                    Unit.of("cSt", "cSt", 1e-6),
                    Unit.of("ft2ps", "ft²/s", 0.3048 * 0.3048)),
            "mm2ps",
            "cSt");

    /** No kinematic viscosity. */
    public static final KinematicViscosity ZERO = new KinematicViscosity(0);

    private KinematicViscosity(double si) {
        super(si);
    }

    /** Returns the kinematic viscosity of so many m²/s. */
    public static KinematicViscosity squareMetresPerSecond(double value) {
        return new KinematicViscosity(value);
    }

    /** Returns the kinematic viscosity of so many mm²/s. */
    public static KinematicViscosity squareMillimetresPerSecond(double value) {
        return KIND.of(value, "mm2ps");
    }

    /** Returns the kinematic viscosity of so many cSt. */
    public static KinematicViscosity centistokes(double value) {
        return KIND.of(value, "cSt");
    }

    /** Returns the kinematic viscosity of so many ft²/s. */
    public static KinematicViscosity squareFeetPerSecond(double value) {
        return KIND.of(value, "ft2ps");
    }

    /** Returns this kinematic viscosity in m²/s. */
    public double squareMetresPerSecond() {
        return si();
    }

    /** Returns this kinematic viscosity in mm²/s. */
    public double toSquareMillimetresPerSecond() {
        return in("mm2ps");
    }

    /** Returns this kinematic viscosity in cSt. */
    public double toCentistokes() {
        return in("cSt");
    }

    /** Returns this kinematic viscosity in ft²/s. */
    public double toSquareFeetPerSecond() {
        return in("ft2ps");
    }

    /** Returns the dynamic viscosity of a liquid of that density. */
    public Viscosity times(Density density) {
        return Viscosity.pascalSeconds(si() * density.si());
    }

    @Override
    public Kind<KinematicViscosity> kind() {
        return KIND;
    }
}

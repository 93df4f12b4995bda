package headrace.units;

import java.util.List;

/** A dynamic viscosity. */
public final class Viscosity extends Amount<Viscosity> {
    /** The units of a viscosity, the SI unit first. */
    public static final Kind<Viscosity> KIND = new Kind<>(
            "viscosity",
            Viscosity.class,
            Viscosity::new,
            List.of(Unit.of("Pas", "Pa·s", 1), Unit.of("mPas", "mPa·s", 1e-3), Unit.of("cP", "cP", 1e-3)),
            "mPas",
            "cP");

    /** No viscosity. */
    public static final Viscosity ZERO = new Viscosity(0);

    private Viscosity(double si) {
        super(si);
    }

    /** Returns the viscosity of so many Pa·s. */
    public static Viscosity pascalSeconds(double value) {
        return new Viscosity(value);
    }

    /** Returns the viscosity of so many mPa·s. */
    public static Viscosity millipascalSeconds(double value) {
        return KIND.of(value, "mPas");
    }

    /** Returns the viscosity of so many cP. */
    public static Viscosity centipoises(double value) {
        return KIND.of(value, "cP");
    }

    /** Returns this viscosity in Pa·s. */
    public double pascalSeconds() {
        return si();
    }

    /** Returns this viscosity in mPa·s. */
    public double toMillipascalSeconds() {
        return in("mPas");
    }

    /** Returns this viscosity in cP. */
    public double toCentipoises() {
        return in("cP");
    }

    /** Returns the kinematic viscosity of a liquid of that density. */
    public KinematicViscosity over(Density density) {
        return KinematicViscosity.squareMetresPerSecond(si() / density.si());
    }

    @Override
    public Kind<Viscosity> kind() {
        return KIND;
    }
}

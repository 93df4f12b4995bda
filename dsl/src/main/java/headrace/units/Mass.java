package headrace.units;

import java.util.List;

/**
 * A mass.
 *
 * <p>The pound is 0.45359237 kg, exactly.
 */
public final class Mass extends Amount<Mass> {
    /** The units of a mass, the SI unit first. */
    public static final Kind<Mass> KIND = new Kind<>(
            "mass",
            Mass.class,
            Mass::new,
            List.of(
                    Unit.of("kg", "kg", 1),
                    Unit.of("gram", "g", 1e-3),
                    Unit.of("tonne", "t", 1e3),
                    Unit.of("lb", "lb", 0.45359237, "lbs")),
            "kg",
            "lb");

    /** No mass. */
    public static final Mass ZERO = new Mass(0);

    private Mass(double si) {
        super(si);
    }

    /** Returns the mass of so many kg. */
    public static Mass kilograms(double value) {
        return new Mass(value);
    }

    /** Returns the mass of so many g. */
    public static Mass grams(double value) {
        return KIND.of(value, "gram");
    }

    /** Returns the mass of so many t. */
    public static Mass tonnes(double value) {
        return KIND.of(value, "tonne");
    }

    /** Returns the mass of so many lb. */
    public static Mass pounds(double value) {
        return KIND.of(value, "lb");
    }

    /** Returns this mass in kg. */
    public double kilograms() {
        return si();
    }

    /** Returns this mass in g. */
    public double toGrams() {
        return in("gram");
    }

    /** Returns this mass in t. */
    public double toTonnes() {
        return in("tonne");
    }

    /** Returns this mass in lb. */
    public double toPounds() {
        return in("lb");
    }

    /** Returns the density of this mass in a volume. */
    public Density over(Volume volume) {
        return Density.kilogramsPerCubicMetre(si() / volume.si());
    }

    /** Returns the volume of this mass at a density. */
    public Volume over(Density density) {
        return Volume.cubicMetres(si() / density.si());
    }

    @Override
    public Kind<Mass> kind() {
        return KIND;
    }
}

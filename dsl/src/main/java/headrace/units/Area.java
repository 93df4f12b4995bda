package headrace.units;

import java.util.List;

/** An area. */
public final class Area extends Amount<Area> {
    /** The units of an area, the SI unit first. */
    public static final Kind<Area> KIND = new Kind<>(
            "area",
            Area.class,
            Area::new,
            List.of(
                    Unit.of("m2", "m²", 1),
                    Unit.of("mm2", "mm²", 1e-6),
                    Unit.of("cm2", "cm²", 1e-4),
                    Unit.of("ft2", "ft²", 0.3048 * 0.3048, "sq ft"),
                    Unit.of("inch2", "in²", 0.0254 * 0.0254, "sq in")),
            "m2",
            "ft2");

    /** No area. */
    public static final Area ZERO = new Area(0);

    private Area(double si) {
        super(si);
    }

    /** Returns the area of so many m². */
    public static Area squareMetres(double value) {
        return new Area(value);
    }

    /** Returns the area of so many mm². */
    public static Area squareMillimetres(double value) {
        return KIND.of(value, "mm2");
    }

    /** Returns the area of so many ft². */
    public static Area squareFeet(double value) {
        return KIND.of(value, "ft2");
    }

    /** Returns the area of so many cm². */
    public static Area squareCentimetres(double value) {
        return KIND.of(value, "cm2");
    }

    /** Returns the area of so many in². */
    public static Area squareInches(double value) {
        return KIND.of(value, "inch2");
    }

    /** Returns this area in m². */
    public double squareMetres() {
        return si();
    }

    /** Returns this area in mm². */
    public double toSquareMillimetres() {
        return in("mm2");
    }

    /** Returns this area in ft². */
    public double toSquareFeet() {
        return in("ft2");
    }

    /** Returns this area in cm². */
    public double toSquareCentimetres() {
        return in("cm2");
    }

    /** Returns this area in in². */
    public double toSquareInches() {
        return in("inch2");
    }

    /** Returns the flow through this area at a mean velocity. */
    public Flow times(Velocity velocity) {
        return Flow.cubicMetresPerSecond(si() * velocity.si());
    }

    /** Returns the volume of this area over a length. */
    public Volume times(Length length) {
        return Volume.cubicMetres(si() * length.si());
    }

    /** Returns the other side of a rectangle of this area. */
    public Length over(Length length) {
        return Length.metres(si() / length.si());
    }

    @Override
    public Kind<Area> kind() {
        return KIND;
    }
}

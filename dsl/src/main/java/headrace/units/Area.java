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
                    Unit.of("m2", "m²", 1, "m2"),
                    Unit.of("mm2", "mm²", 1e-6, "mm2"),
                    Unit.of("ft2", "ft²", 0.3048 * 0.3048, "ft2")),
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

    @Override
    public Kind<Area> kind() {
        return KIND;
    }
}

package headrace.units;

import java.util.List;

/**
 * A volume.
 *
 * <p>The US gallon is 231 cubic inches of 25.4 mm, the imperial gallon 4.54609 L, both exactly.
 */
public final class Volume extends Amount<Volume> {
    /** The units of a volume, the SI unit first. */
    public static final Kind<Volume> KIND = new Kind<>(
            "volume",
            Volume.class,
            Volume::new,
            List.of(
                    Unit.of("m3", "m³", 1),
                    Unit.of("litre", "L", 1e-3, "l", "litres"),
                    Unit.of("gal", "gal", 231 * 0.0254 * 0.0254 * 0.0254, "US gal", "gallon", "gallons"),
                    Unit.of("impGal", "imp gal", 4.54609e-3, "UK gal", "imperial gallon"),
                    Unit.of("ft3", "ft³", 0.3048 * 0.3048 * 0.3048, "cu ft")),
            "m3",
            "gal");

    /** No volume. */
    public static final Volume ZERO = new Volume(0);

    private Volume(double si) {
        super(si);
    }

    /** Returns the volume of so many m³. */
    public static Volume cubicMetres(double value) {
        return new Volume(value);
    }

    /** Returns the volume of so many L. */
    public static Volume litres(double value) {
        return KIND.of(value, "litre");
    }

    /** Returns the volume of so many gal. */
    public static Volume usGallons(double value) {
        return KIND.of(value, "gal");
    }

    /** Returns the volume of so many imp gal. */
    public static Volume imperialGallons(double value) {
        return KIND.of(value, "impGal");
    }

    /** Returns the volume of so many ft³. */
    public static Volume cubicFeet(double value) {
        return KIND.of(value, "ft3");
    }

    /** Returns this volume in m³. */
    public double cubicMetres() {
        return si();
    }

    /** Returns this volume in L. */
    public double toLitres() {
        return in("litre");
    }

    /** Returns this volume in gal. */
    public double toUsGallons() {
        return in("gal");
    }

    /** Returns this volume in imp gal. */
    public double toImperialGallons() {
        return in("impGal");
    }

    /** Returns this volume in ft³. */
    public double toCubicFeet() {
        return in("ft3");
    }

    /** Returns the flow that fills this volume in a time. */
    public Flow over(Time time) {
        return Flow.cubicMetresPerSecond(si() / time.si());
    }

    /** Returns the time in which a flow fills this volume. */
    public Time over(Flow flow) {
        return Time.seconds(si() / flow.si());
    }

    /** Returns the mass of this volume at a density. */
    public Mass times(Density density) {
        return Mass.kilograms(si() * density.si());
    }

    @Override
    public Kind<Volume> kind() {
        return KIND;
    }
}

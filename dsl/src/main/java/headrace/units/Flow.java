package headrace.units;

import java.util.List;

/**
 * A rate of flow by volume.
 *
 * <p>The US gallon is 231 cubic inches of 25.4 mm, the imperial gallon 4.54609 L, both exactly.
 */
public final class Flow extends Amount<Flow> {
    /** The units of a flow, the SI unit first. */
    public static final Kind<Flow> KIND = new Kind<>(
            "flow",
            Flow.class,
            Flow::new,
            List.of(
                    Unit.of("m3ps", "m³/s", 1),
                    Unit.of("m3ph", "m³/h", 1 / 3600.0, "m3/hr", "M3/H"),
                    Unit.of("lps", "L/s", 1e-3, "l/s"),
                    Unit.of("lpm", "L/min", 1e-3 / 60, "l/min"),
                    Unit.of("lph", "L/h", 1e-3 / 3600, "l/h"),
                    Unit.of(
                            "gpm",
                            "gpm",
                            231 * 0.0254 * 0.0254 * 0.0254 / 60,
                            "GPM",
                            "US gpm",
                            "USGPM",
                            "gal/min",
                            "US gal/min"),
                    Unit.of(
                            "impGpm",
                            "imp gpm",
                            4.54609e-3 / 60,
                            "igpm",
                            "IGPM",
                            "UK gpm",
                            "imperial gpm",
                            "imp gal/min")),
            "m3ph",
            "gpm");

    /** No flow. */
    public static final Flow ZERO = new Flow(0);

    private Flow(double si) {
        super(si);
    }

    /** Returns the flow of so many m³/s. */
    public static Flow cubicMetresPerSecond(double value) {
        return new Flow(value);
    }

    /** Returns the flow of so many m³/h. */
    public static Flow cubicMetresPerHour(double value) {
        return KIND.of(value, "m3ph");
    }

    /** Returns the flow of so many L/s. */
    public static Flow litresPerSecond(double value) {
        return KIND.of(value, "lps");
    }

    /** Returns the flow of so many L/min. */
    public static Flow litresPerMinute(double value) {
        return KIND.of(value, "lpm");
    }

    /** Returns the flow of so many gpm. */
    public static Flow usGallonsPerMinute(double value) {
        return KIND.of(value, "gpm");
    }

    /** Returns the flow of so many imp gpm. */
    public static Flow imperialGallonsPerMinute(double value) {
        return KIND.of(value, "impGpm");
    }

    /** Returns the flow of so many L/h. */
    public static Flow litresPerHour(double value) {
        return KIND.of(value, "lph");
    }

    /** Returns this flow in m³/s. */
    public double cubicMetresPerSecond() {
        return si();
    }

    /** Returns this flow in m³/h. */
    public double toCubicMetresPerHour() {
        return in("m3ph");
    }

    /** Returns this flow in L/s. */
    public double toLitresPerSecond() {
        return in("lps");
    }

    /** Returns this flow in L/min. */
    public double toLitresPerMinute() {
        return in("lpm");
    }

    /** Returns this flow in gpm. */
    public double toUsGallonsPerMinute() {
        return in("gpm");
    }

    /** Returns this flow in imp gpm. */
    public double toImperialGallonsPerMinute() {
        return in("impGpm");
    }

    /** Returns this flow in L/h. */
    public double toLitresPerHour() {
        return in("lph");
    }

    /** Returns the hydraulic power that lifts this flow by a pressure difference. */
    public Power times(Pressure rise) {
        return Power.watts(si() * rise.si());
    }

    /** Returns the volume that flows in a time. */
    public Volume times(Time time) {
        return Volume.cubicMetres(si() * time.si());
    }

    /** Returns the mass flow of a liquid of that density. */
    public MassFlow times(Density density) {
        return MassFlow.kilogramsPerSecond(si() * density.si());
    }

    /** Returns the mean velocity through an area. */
    public Velocity over(Area area) {
        return Velocity.metresPerSecond(si() / area.si());
    }

    /** Returns the area that this flow passes at a mean velocity. */
    public Area over(Velocity velocity) {
        return Area.squareMetres(si() / velocity.si());
    }

    @Override
    public Kind<Flow> kind() {
        return KIND;
    }
}

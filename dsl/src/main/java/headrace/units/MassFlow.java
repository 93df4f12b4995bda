package headrace.units;

import java.util.List;

/**
 * A rate of flow by mass.
 *
 * <p>The pound is 0.45359237 kg, exactly.
 */
public final class MassFlow extends Amount<MassFlow> {
    /** The units of a mass flow, the SI unit first. */
    public static final Kind<MassFlow> KIND = new Kind<>(
            "mass flow",
            MassFlow.class,
            MassFlow::new,
            List.of(
                    Unit.of("kgps", "kg/s", 1),
                    Unit.of("kgph", "kg/h", 1 / 3600.0),
                    Unit.of("tph", "t/h", 1 / 3.6),
                    Unit.of("lbph", "lb/h", 0.45359237 / 3600)),
            "kgps",
            "lbph");

    /** No mass flow. */
    public static final MassFlow ZERO = new MassFlow(0);

    private MassFlow(double si) {
        super(si);
    }

    /** Returns the mass flow of so many kg/s. */
    public static MassFlow kilogramsPerSecond(double value) {
        return new MassFlow(value);
    }

    /** Returns the mass flow of so many kg/h. */
    public static MassFlow kilogramsPerHour(double value) {
        return KIND.of(value, "kgph");
    }

    /** Returns the mass flow of so many lb/h. */
    public static MassFlow poundsPerHour(double value) {
        return KIND.of(value, "lbph");
    }

    /** Returns the mass flow of so many t/h. */
    public static MassFlow tonnesPerHour(double value) {
        return KIND.of(value, "tph");
    }

    /** Returns this mass flow in kg/s. */
    public double kilogramsPerSecond() {
        return si();
    }

    /** Returns this mass flow in kg/h. */
    public double toKilogramsPerHour() {
        return in("kgph");
    }

    /** Returns this mass flow in lb/h. */
    public double toPoundsPerHour() {
        return in("lbph");
    }

    /** Returns this mass flow in t/h. */
    public double toTonnesPerHour() {
        return in("tph");
    }

    /** Returns the volume flow of a liquid of that density. */
    public Flow over(Density density) {
        return Flow.cubicMetresPerSecond(si() / density.si());
    }

    /** Returns the mass that flows in a time. */
    public Mass times(Time time) {
        return Mass.kilograms(si() * time.si());
    }

    @Override
    public Kind<MassFlow> kind() {
        return KIND;
    }
}

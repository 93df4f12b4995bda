package headrace.units;

import java.util.List;

/** A torque. */
public final class Torque extends Amount<Torque> {
    /** The units of a torque, the SI unit first. */
    public static final Kind<Torque> KIND = new Kind<>(
            "torque",
            Torque.class,
            Torque::new,
            List.of(
                    Unit.of("Nm", "N·m", 1),
                    Unit.of("lbfft", "lbf·ft", 0.45359237 * 9.80665 * 0.3048, "ft lbf", "lb ft", "ft lb"),
                    Unit.of("lbfin", "lbf·in", 0.45359237 * 9.80665 * 0.0254, "in lbf", "lb in", "in lb")),
            "Nm",
            "lbfft");

    /** No torque. */
    public static final Torque ZERO = new Torque(0);

    private Torque(double si) {
        super(si);
    }

    /** Returns the torque of so many N·m. */
    public static Torque newtonMetres(double value) {
        return new Torque(value);
    }

    /** Returns the torque of so many lbf·ft. */
    public static Torque poundForceFeet(double value) {
        return KIND.of(value, "lbfft");
    }

    /** Returns the torque of so many lbf·in. */
    public static Torque poundForceInches(double value) {
        return KIND.of(value, "lbfin");
    }

    /** Returns this torque in N·m. */
    public double newtonMetres() {
        return si();
    }

    /** Returns this torque in lbf·ft. */
    public double toPoundForceFeet() {
        return in("lbfft");
    }

    /** Returns this torque in lbf·in. */
    public double toPoundForceInches() {
        return in("lbfin");
    }

    /** Returns the power of this torque at a speed. */
    public Power times(Speed speed) {
        return Power.watts(si() * speed.si());
    }

    @Override
    public Kind<Torque> kind() {
        return KIND;
    }
}

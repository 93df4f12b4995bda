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
                    Unit.of("Nm", "N·m", 1, "N m"),
                    Unit.of("lbfft", "lbf·ft", 0.45359237 * 9.80665 * 0.3048, "lbf ft", "ft lbf")),
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

    /** Returns this torque in N·m. */
    public double newtonMetres() {
        return si();
    }

    /** Returns this torque in lbf·ft. */
    public double toPoundForceFeet() {
        return in("lbfft");
    }

    @Override
    public Kind<Torque> kind() {
        return KIND;
    }
}

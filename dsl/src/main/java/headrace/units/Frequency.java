package headrace.units;

import java.util.List;

/**
 * A frequency of the supply.
 *
 * <p>Not a speed: a motor turns a frequency into a speed by its poles.
 */
public final class Frequency extends Quantity<Frequency> {
    /** The units of a frequency, the SI unit first. */
    public static final Kind<Frequency> KIND = new Kind<>(
            "frequency",
            Frequency.class,
            Frequency::new,
            List.of(Unit.of("Hz", "Hz", 1), Unit.of("kHz", "kHz", 1e3)),
            "Hz",
            "Hz");

    /** No frequency. */
    public static final Frequency ZERO = new Frequency(0);

    private Frequency(double si) {
        super(si);
    }

    /** Returns the frequency of so many Hz. */
    public static Frequency hertz(double value) {
        return new Frequency(value);
    }

    /** Returns the frequency of so many kHz. */
    public static Frequency kilohertz(double value) {
        return KIND.of(value, "kHz");
    }

    /** Returns this frequency in Hz. */
    public double hertz() {
        return si();
    }

    /** Returns this frequency in kHz. */
    public double toKilohertz() {
        return in("kHz");
    }

    @Override
    public Kind<Frequency> kind() {
        return KIND;
    }
}

package headrace.units;

import headrace.problem.Refusal;
import java.util.List;

/**
 * A frequency of the supply.
 *
 * <p>Not a speed: a motor turns a frequency into a speed by its poles.
 */
public final class Frequency extends Amount<Frequency> {
    /** The units of a frequency, the SI unit first. */
    public static final Kind<Frequency> KIND = new Kind<>(
            "frequency",
            Frequency.class,
            Frequency::new,
            List.of(Unit.of("Hz", "Hz", 1, "HZ", "hz"), Unit.of("kHz", "kHz", 1e3)),
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

    /**
     * Returns the synchronous speed of a machine on a supply of this frequency: two revolutions a pole and period.
     *
     * @param poles the number of its poles, not of pole pairs
     * @throws Refusal with {@code UNEVEN_POLES} if they are not an even number above 0
     */
    public Speed synchronousSpeed(int poles) {
        if (poles < 2 || poles % 2 != 0) {
            throw new Refusal(
                    UnitProblem.UNEVEN_POLES,
                    "Asked for the synchronous speed of a machine of " + poles + " poles",
                    "Poles come in pairs: 2, 4, 6 and so on",
                    "Give the number of poles, which is twice that of pole pairs");
        }
        return Speed.revolutionsPerSecond(2 * si() / poles);
    }

    @Override
    public Kind<Frequency> kind() {
        return KIND;
    }
}

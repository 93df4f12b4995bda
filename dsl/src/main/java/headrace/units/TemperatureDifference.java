package headrace.units;

import java.util.List;

/**
 * A difference of two temperatures.
 *
 * <p>Not a temperature: 10 K more is 18 °F more.
 */
public final class TemperatureDifference extends Amount<TemperatureDifference> {
    /** The units of a temperature difference, the SI unit first. */
    public static final Kind<TemperatureDifference> KIND = new Kind<>(
            "temperature difference",
            TemperatureDifference.class,
            TemperatureDifference::new,
            List.of(
                    Unit.of("K", "K", 1, "°C diff", "delta C", "Δ°C", "ΔK"),
                    Unit.of("dF", "°F diff", 5 / 9.0, "delta F", "Δ°F")),
            "K",
            "dF");

    /** No temperature difference. */
    public static final TemperatureDifference ZERO = new TemperatureDifference(0);

    private TemperatureDifference(double si) {
        super(si);
    }

    /** Returns the temperature difference of so many K. */
    public static TemperatureDifference kelvins(double value) {
        return new TemperatureDifference(value);
    }

    /** Returns the temperature difference of so many °F diff. */
    public static TemperatureDifference fahrenheitDegrees(double value) {
        return KIND.of(value, "dF");
    }

    /** Returns this temperature difference in K. */
    public double kelvins() {
        return si();
    }

    /** Returns this temperature difference in °F diff. */
    public double toFahrenheitDegrees() {
        return in("dF");
    }

    @Override
    public Kind<TemperatureDifference> kind() {
        return KIND;
    }
}

package headrace.units;

import java.util.List;

/**
 * A temperature.
 *
 * <p>Not a temperature difference: two of them cannot be added, and their difference is a
 * {@link TemperatureDifference}.
 */
public final class Temperature extends Quantity<Temperature> {
    /** The units of a temperature, the SI unit first. */
    public static final Kind<Temperature> KIND = new Kind<>(
            "temperature",
            Temperature.class,
            Temperature::new,
            List.of(
                    Unit.of("kelvin", "K abs", 1),
                    Unit.shifted("degC", "°C", 1, 273.15, "C", "deg C", "celsius"),
                    Unit.shifted("degF", "°F", 5 / 9.0, 273.15 - 32 * 5 / 9.0, "F", "deg F", "fahrenheit")),
            "degC",
            "degF");

    private Temperature(double kelvins) {
        super(kelvins);
    }

    /** Returns the temperature of so many kelvins above absolute zero. */
    public static Temperature kelvins(double value) {
        return new Temperature(value);
    }

    /** Returns the temperature of so many °C. */
    public static Temperature celsius(double value) {
        return KIND.of(value, "degC");
    }

    /** Returns the temperature of so many °F. */
    public static Temperature fahrenheit(double value) {
        return KIND.of(value, "degF");
    }

    /** Returns this temperature in kelvins above absolute zero. */
    public double kelvins() {
        return si();
    }

    /** Returns this temperature in °C. */
    public double toCelsius() {
        return in("degC");
    }

    /** Returns this temperature in °F. */
    public double toFahrenheit() {
        return in("degF");
    }

    /** Returns the temperature that much higher. */
    public Temperature plus(TemperatureDifference rise) {
        return make(si() + rise.si());
    }

    /** Returns the temperature that much lower. */
    public Temperature minus(TemperatureDifference fall) {
        return make(si() - fall.si());
    }

    /** Returns how much higher this is than another. */
    public TemperatureDifference minus(Temperature other) {
        return TemperatureDifference.kelvins(si() - other.si());
    }

    @Override
    public Kind<Temperature> kind() {
        return KIND;
    }
}

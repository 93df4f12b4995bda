package headrace.liquid;

import headrace.problem.Refusal;
import headrace.units.Temperature;
import java.util.Optional;

/**
 * A liquid whose properties were given at one temperature.
 *
 * @param name what it is called
 * @param temperature the temperature
 * @param properties the properties there
 */
record GivenLiquid(String name, Temperature temperature, Properties properties) implements Substance {
    GivenLiquid {
        boolean possible = properties.kilogramsPerCubicMetre() > 0
                && properties.pascalSeconds() > 0
                && properties.vapourPascals() >= 0
                && properties.joulesPerKilogramKelvin() > 0;
        if (!possible || name.isBlank()) {
            throw new Refusal(
                    LiquidProblem.IMPOSSIBLE_LIQUID,
                    "Given the liquid '" + name + "' with " + properties,
                    "A liquid has a name, and density, viscosity and heat capacity above 0",
                    "Correct the value");
        }
    }

    @Override
    public Optional<Temperature> freezingPoint() {
        return Optional.empty();
    }

    @Override
    public Properties at(Temperature other) {
        if (!other.equals(temperature)) {
            throw new Refusal(
                    LiquidProblem.TEMPERATURE_OUTSIDE_LIQUID,
                    "Asked for " + name + " at " + other,
                    "Its properties were given at " + temperature + " only",
                    "Give them at the other temperature too");
        }
        return properties;
    }

    @Override
    public String source() {
        return name + ": properties as given at " + temperature;
    }
}

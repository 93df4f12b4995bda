package headrace.liquid;

import headrace.units.Temperature;
import java.util.Optional;

/** What a liquid is made of: knows its properties at a temperature. */
interface Substance {
    /** Returns the name as it stands in a sentence, such as {@code water}. */
    String name();

    /** Returns the temperature below which it is no liquid. */
    Optional<Temperature> freezingPoint();

    /** Returns the properties at a temperature, or refuses one outside its range. */
    Properties at(Temperature temperature);

    /** Returns the correlation and its publication. */
    String source();

    /**
     * The properties at one temperature, in SI units.
     *
     * @param kilogramsPerCubicMetre the density
     * @param pascalSeconds the dynamic viscosity
     * @param vapourPascals the vapour pressure
     * @param joulesPerKilogramKelvin the heat capacity at constant pressure
     */
    record Properties(
            double kilogramsPerCubicMetre,
            double pascalSeconds,
            double vapourPascals,
            double joulesPerKilogramKelvin) {}
}

package headrace.liquid;

import com.hummeling.if97.IF97;
import com.hummeling.if97.OutOfRangeException;
import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.Temperature;
import java.util.Optional;

/**
 * Liquid water from 0 to 150 °C.
 *
 * @param pressure the pressure at which it is; where it would boil at that pressure, it is taken at its vapour pressure
 */
record Water(AbsolutePressure pressure) implements Substance {
    private static final double COLDEST_CELSIUS = 0;
    private static final double HOTTEST_CELSIUS = 150;

    @Override
    public String name() {
        return "water";
    }

    @Override
    public Optional<Temperature> freezingPoint() {
        return Optional.of(Temperature.celsius(0));
    }

    @Override
    public String source() {
        return "water: density, heat capacity and vapour pressure by IAPWS R7-97(2012), viscosity by IAPWS R12-08";
    }

    @Override
    public Properties at(Temperature temperature) {
        double celsius = temperature.toCelsius();
        if (celsius < COLDEST_CELSIUS || celsius > HOTTEST_CELSIUS) {
            throw new Refusal(
                    LiquidProblem.TEMPERATURE_OUTSIDE_LIQUID,
                    "Asked for water at " + temperature,
                    "Liquid water is known here from 0 to 150 °C",
                    "Choose a temperature in that range, or a glycol mixture if the circuit runs colder");
        }
        try {
            IF97 steam = new IF97(IF97.UnitSystem.SI);
            double kelvins = temperature.kelvins();
            double vapour = WaterVapour.pascals(temperature);
            double pascals = Math.max(pressure.pascals(), vapour * (1 + BARELY_ABOVE));
            double density = steam.densityPT(pascals, kelvins);
            double viscosity = WaterViscosity.pascalSeconds(density, kelvins);
            return new Properties(density, viscosity, vapour, steam.isobaricHeatCapacityPT(pascals, kelvins));
        } catch (OutOfRangeException e) {
            throw new AssertionError("0 to 150 °C lies inside region 1", e);
        }
    }

    /** Keeps the state on the liquid side of its boiling line, where both sides are otherwise equally right. */
    private static final double BARELY_ABOVE = 1e-9;
}

package headrace.liquid;

import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Temperature;
import java.util.Optional;

/**
 * A glycol mixed with water, from its freezing point to 100 °C.
 *
 * @param glycol which glycol
 * @param massPercent its share by mass in per cent, above 0 and up to 60
 */
record GlycolMixture(Glycol glycol, double massPercent) implements Substance {
    private static final double MOST_PERCENT = 60;
    private static final double HOTTEST_CELSIUS = 100;
    private static final double WATER_GRAMS_PER_MOLE = 18.015;

    GlycolMixture {
        if (!(massPercent > 0 && massPercent <= MOST_PERCENT)) {
            throw new Refusal(
                    LiquidProblem.GLYCOL_OUTSIDE_RANGE,
                    "Asked for a mixture of " + Numbers.print(massPercent) + " % " + glycol.words() + " by mass",
                    "The mixture is known from above 0 to 60 % by mass",
                    "Choose a share in that range, or take water");
        }
    }

    @Override
    public String name() {
        return Numbers.print(massPercent) + " % " + glycol.words();
    }

    @Override
    public Optional<Temperature> freezingPoint() {
        return Optional.of(freezing());
    }

    private Temperature freezing() {
        return Temperature.celsius(glycol.freezingCelsius(massPercent));
    }

    @Override
    public String source() {
        return name() + " by mass: density, heat capacity, viscosity and freezing point by Melinder (IIR 2010); vapour"
                + " pressure that of its water by Raoult's law, an assumption";
    }

    @Override
    public Properties at(Temperature temperature) {
        double celsius = temperature.toCelsius();
        if (temperature.compareTo(freezing()) < 0 || celsius > HOTTEST_CELSIUS) {
            throw new Refusal(
                    LiquidProblem.TEMPERATURE_OUTSIDE_LIQUID,
                    "Asked for " + name() + " at " + temperature,
                    "This mixture is known from its freezing point of " + freezing() + " to 100 °C",
                    "Choose a temperature in that range, or more glycol if the circuit runs colder");
        }
        return new Properties(
                glycol.kilogramsPerCubicMetre(massPercent, celsius),
                glycol.pascalSeconds(massPercent, celsius),
                moleShareOfWater() * WaterVapour.pascals(temperature),
                glycol.joulesPerKilogramKelvin(massPercent, celsius));
    }

    private double moleShareOfWater() {
        double water = (100 - massPercent) / WATER_GRAMS_PER_MOLE;
        return water / (water + massPercent / glycol.gramsPerMole());
    }
}

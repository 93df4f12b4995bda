package headrace.script;

import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.HeatCapacity;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import java.util.Map;

/** Words about what is pumped. */
public final class LiquidWords implements Words {
    private static final String WATER =
            "Liquid water from 0 to 150 °C, at 101.325 kPa unless chosen otherwise, where it"
                    + " would boil at its vapour pressure.";
    private static final String WATER_EXAMPLE = "water(12.degC)";

    @Override
    public String subject() {
        return "Liquids";
    }

    /** Makes water. */
    @Word(help = WATER, example = WATER_EXAMPLE)
    public static Liquid water(Object temperature) {
        return Liquid.water(celsius(temperature, "the temperature of water"));
    }

    /** Makes water at a pressure. */
    @Word(
            help = WATER,
            example = WATER_EXAMPLE,
            choices = {"pressure: absolute pressure; 101.325 kPa unless chosen"})
    public static Liquid water(Map<String, ?> given, Object temperature) {
        Choices choices = Choices.of("water", given, "pressure");
        Temperature at = celsius(temperature, "the temperature of water");
        return choices.has("pressure")
                ? Liquid.water(at, choices.quantity("pressure", AbsolutePressure.KIND))
                : Liquid.water(at);
    }

    /** Makes a mixture of ethylene glycol and water. */
    @Word(
            help = "Ethylene glycol in water, its share by mass up to 60 %, from the freezing point to 100 °C.",
            example = "ethyleneGlycol(30.percent, 5.degC)")
    public static Liquid ethyleneGlycol(Object share, Object temperature) {
        return Liquid.ethyleneGlycol(
                Wanted.ratio(share, "the share of glycol by mass"),
                celsius(temperature, "the temperature of a mixture"));
    }

    /** Makes a mixture of propylene glycol and water. */
    @Word(
            help = "Propylene glycol in water, its share by mass up to 60 %, from the freezing point to 100 °C.",
            example = "propyleneGlycol(30.percent, 5.degC)")
    public static Liquid propyleneGlycol(Object share, Object temperature) {
        return Liquid.propyleneGlycol(
                Wanted.ratio(share, "the share of glycol by mass"),
                celsius(temperature, "the temperature of a mixture"));
    }

    /** Makes a liquid of one's own. */
    @Word(
            help = "A liquid of one's own, known at this temperature only.",
            example =
                    "liquid('brine', 5.degC, density: 1180.kgpm3, viscosity: '2.3 mPa·s', vapourPressure: '0.7 kPa abs',"
                            + " heatCapacity: '3.1 kJ/(kg·K)')",
            choices = {
                "density: its density",
                "viscosity: its dynamic viscosity",
                "vapourPressure: its vapour pressure, absolute",
                "heatCapacity: its specific heat capacity"
            })
    public static Liquid liquid(Map<String, ?> given, String name, Object temperature) {
        Choices choices = Choices.of("liquid", given, "density", "viscosity", "vapourPressure", "heatCapacity");
        return Liquid.of(
                name,
                celsius(temperature, "the temperature of a liquid"),
                new LiquidProperties(
                        choices.quantity("density", Density.KIND),
                        choices.quantity("viscosity", Viscosity.KIND),
                        choices.quantity("vapourPressure", AbsolutePressure.KIND),
                        choices.quantity("heatCapacity", HeatCapacity.KIND)));
    }

    private static Temperature celsius(Object given, String place) {
        return Wanted.quantity(Temperature.KIND, given, place);
    }
}

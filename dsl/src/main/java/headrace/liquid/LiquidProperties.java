package headrace.liquid;

import headrace.liquid.Substance.Properties;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.HeatCapacity;
import headrace.units.Viscosity;

/**
 * What a liquid of one's own is like at one temperature.
 *
 * @param density the density
 * @param viscosity the dynamic viscosity
 * @param vapourPressure the vapour pressure
 * @param heatCapacity the specific heat capacity
 */
public record LiquidProperties(
        Density density, Viscosity viscosity, AbsolutePressure vapourPressure, HeatCapacity heatCapacity) {
    Properties inSi() {
        return new Properties(density.si(), viscosity.si(), vapourPressure.si(), heatCapacity.si());
    }
}

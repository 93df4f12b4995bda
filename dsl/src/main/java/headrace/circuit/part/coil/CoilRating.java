package headrace.circuit.part.coil;

import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Temperature;

/**
 * What the schedule says of a coil.
 *
 * @param heat what it gives or takes at design, above 0
 * @param water the flow of the liquid
 * @param liquid the liquid, at the temperature at which it enters
 * @param air the mass flow of the air
 * @param enteringAir the temperature at which the air enters
 */
public record CoilRating(Power heat, Flow water, Liquid liquid, MassFlow air, Temperature enteringAir) {
    double waterCapacity() {
        return water.si() * liquid.density().si() * liquid.heatCapacity().si();
    }

    double airCapacity() {
        return air.si() * CoilHeat.AIR_JOULES_PER_KILOGRAM_KELVIN;
    }

    double kelvins() {
        return Math.abs(enteringAir.kelvins() - liquid.temperature().kelvins());
    }
}

package headrace.operation.limit;

import headrace.curve.CurvePoint;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.TemperatureDifference;

/**
 * The heat that a pump leaves in what it pumps: {@code ΔT = (P − ρ·g·Q·H)/(ρ·Q·c_p)}.
 *
 * <p>In this form nothing nearly equal is divided where the efficiency goes to 0. All losses of the pump are taken to
 * stay in the liquid, and none of the motor's. Source: textbook knowledge, energy balance.
 */
public final class HeatRise {
    private HeatRise() {}

    /**
     * Returns the temperature rise of a liquid in one passage through the pump.
     *
     * @throws Refusal with {@code NO_HEAT_RISE} at no flow, where nothing passes
     */
    public static TemperatureDifference at(CurvePoint point, Liquid liquid) {
        if (point.flow().si() <= 0) {
            throw new Refusal(
                    LimitProblem.NO_HEAT_RISE,
                    "Asked by how much a pump warms its liquid at " + point.flow(),
                    "Only what passes is warmed by so many kelvins; at no flow the filling warms with time",
                    "Ask for the time against a closed valve instead");
        }
        return TemperatureDifference.kelvins(
                kelvins(point.flow().si(), point.shaftPower().si(), point.head().si(), liquid));
    }

    static double kelvins(double q, double shaftWatts, double headMetres, Liquid liquid) {
        double rho = liquid.density().kilogramsPerCubicMetre();
        double lost = shaftWatts - rho * Liquid.STANDARD_GRAVITY * q * headMetres;
        return lost / (rho * q * liquid.heatCapacity().joulesPerKilogramKelvin());
    }
}

package headrace.liquid;

import com.hummeling.if97.IF97;
import com.hummeling.if97.OutOfRangeException;
import headrace.units.Temperature;

/**
 * The vapour pressure of water.
 *
 * <p>Source: IAPWS R7-97(2012) from 0 °C on. Below, where a mixture is still liquid, that of undercooled water by
 * Murphy and Koop, Quarterly Journal of the Royal Meteorological Society 131 (2005), equation 10.
 */
final class WaterVapour {
    private WaterVapour() {}

    static double pascals(Temperature temperature) {
        double t = temperature.kelvins();
        if (temperature.toCelsius() < 0) {
            return undercooled(t);
        }
        try {
            return new IF97(IF97.UnitSystem.SI).saturationPressureT(t);
        } catch (OutOfRangeException e) {
            throw new AssertionError("Asked only up to 150 °C", e);
        }
    }

    private static double undercooled(double t) {
        double log = Math.log(t);
        return Math.exp(54.842763
                - 6763.22 / t
                - 4.210 * log
                + 0.000367 * t
                + Math.tanh(0.0415 * (t - 218.8)) * (53.878 - 1331.22 / t - 9.44523 * log + 0.014025 * t));
    }
}

package headrace.rule.index;

import headrace.curve.CurveFormula;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;

/**
 * A made-up pump that can be worked by hand: with x = Q/50 m³/h its head is 40 m − 8·x² m and its shaft power P₁·(0.5 +
 * 0.5·x), so that its best efficiency lies at x = 1, where H = 32 m and 1 + H'/H = 1 − 0.5 = P'/P.
 */
public final class JudgedPump {
    /** η(0.75)/η(1) = 0.75·35.5/32/0.875. */
    static final double PART_LOAD = 0.75 * 35.5 / 32 / 0.875;

    /** η(1.1)/η(1) = 1.1·30.32/32/1.05. */
    static final double OVERLOAD = 1.1 * 30.32 / 32 / 1.05;

    private JudgedPump() {}

    /** With a best efficiency, at a speed; water at 20 °C. */
    public static PumpCurve of(Ratio bestEfficiency, double revolutionsPerMinute) {
        return of(bestEfficiency, revolutionsPerMinute, Liquid.water(Temperature.celsius(20)));
    }

    static PumpCurve of(Ratio bestEfficiency, double revolutionsPerMinute, Liquid liquid) {
        double best = 50 / 3600.0;
        double watts = liquid.density().kilogramsPerCubicMetre() * 9.80665 * best * 32 / bestEfficiency.value();
        Polynomial head = Polynomial.of(40, 0, -8 / (best * best));
        Polynomial power = Polynomial.of(0.5 * watts, 0.5 * watts / best);
        return PumpCurve.of(
                "P-J",
                Speed.revolutionsPerMinute(revolutionsPerMinute),
                liquid,
                new CurveFormula(head, power, Flow.cubicMetresPerHour(5), Flow.cubicMetresPerHour(65)));
    }
}

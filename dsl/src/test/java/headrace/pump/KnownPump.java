package headrace.pump;

import headrace.curve.CurveFormula;
import headrace.curve.Duty;
import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Speed;
import headrace.units.Temperature;

/**
 * A made-up pump whose results can be worked by hand: H = 40 m − 0.0025·Q² with Q in m³/h, 80 % efficiency at every
 * flow from 5 to 120 m³/h and at every speed.
 */
public final class KnownPump {
    public static final double EFFICIENCY = 0.8;
    public static final Liquid WATER = Liquid.water(Temperature.celsius(20));
    public static final Speed SPEED = Speed.revolutionsPerMinute(1450);

    /** At 80 m³/h and s = √0.9 the pump gives 0.9·40 − 16 = 20 m. */
    public static final Duty DESIGN = new Duty(m3ph(80), Head.metres(20));

    private static final double PER_HOUR_SQUARED = 3600.0 * 3600;

    private KnownPump() {}

    public static PumpCurve curve() {
        Polynomial head = Polynomial.of(40, 0, -0.0025 * PER_HOUR_SQUARED);
        Polynomial power = head.times(Polynomial.of(0, weight() / EFFICIENCY));
        return PumpCurve.of("P-A", SPEED, WATER, new CurveFormula(head, power, m3ph(5), m3ph(120)))
                .withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
    }

    /** With a motor of 7.5 kW, which the pump never overloads, and speeds from 10 to 100 %. */
    public static PumpSet set(LossModel losses) {
        Power rated = Power.kilowatts(7.5);
        DriveTrain train = DriveTrain.of(Motor.ofClass(rated, 3, 4), Drive.reference(rated), losses);
        return PumpSet.of(curve(), train).withMinimumSpeed(SPEED.times(0.1));
    }

    /** Returns ρ·g·Q·H/η in W, with Q in m³/h. */
    public static double shaftWatts(double cubicMetresPerHour, double metres) {
        return weight() * cubicMetresPerHour / 3600 * metres / EFFICIENCY;
    }

    public static Flow m3ph(double value) {
        return Flow.cubicMetresPerHour(value);
    }

    private static double weight() {
        return WATER.density().kilogramsPerCubicMetre() * 9.80665;
    }
}

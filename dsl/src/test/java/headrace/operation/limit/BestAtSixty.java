package headrace.operation.limit;

import headrace.curve.CurveFormula;
import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.Motor;
import headrace.drive.SeparateLosses;
import headrace.numeric.Polynomial;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.units.Power;

/**
 * A made-up pump of best efficiency at 60 m³/h: H = 40 m − 0.0025·Q² and P = a + 50 W·Q. The efficiency is stationary
 * where a·(40 − 3·0.0025·Q²) = 50·2·0.0025·Q³; at 60 m³/h that is a·13 = 54 000.
 */
public final class BestAtSixty {
    public static final double AT_NO_FLOW = 54_000 / 13.0;

    private BestAtSixty() {}

    public static PumpCurve curve(double from, double to) {
        return PumpCurve.of(
                        "P-B",
                        KnownPump.SPEED,
                        KnownPump.WATER,
                        new CurveFormula(
                                Polynomial.of(40, 0, -0.0025).ofScaled(3600),
                                Polynomial.of(AT_NO_FLOW, 50).ofScaled(3600),
                                KnownPump.m3ph(from),
                                KnownPump.m3ph(to)))
                .withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
    }

    /** With a motor of 7.5 kW and speeds from 40 to 100 %. */
    public static PumpSet set(PumpCurve curve) {
        Power rated = Power.kilowatts(7.5);
        DriveTrain train = DriveTrain.of(Motor.ofClass(rated, 3, 4), Drive.reference(rated), SeparateLosses.ASSUMED);
        return PumpSet.of(curve, train).withMinimumSpeed(KnownPump.SPEED.times(0.4));
    }
}

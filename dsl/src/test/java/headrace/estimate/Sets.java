package headrace.estimate;

import headrace.curve.CurveFormula;
import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Speed;
import headrace.units.Temperature;

/** Invented pump sets for the tests of estimates. */
public final class Sets {
    public static final Speed SPEED = Speed.revolutionsPerMinute(1450);
    static final Liquid WATER = Liquid.water(Temperature.celsius(20));

    private Sets() {}

    public static Flow m3ph(double value) {
        return Flow.cubicMetresPerHour(value);
    }

    /** H = 31.2 m − 0.012·Q − 0.0014·Q², P = 4.2 kW + 68 W·Q − 0.36 W·Q²: power turns at 94.44 m³/h. */
    static PumpCurve turning() {
        return curve(new double[] {31.2, -0.012, -0.0014}, new double[] {4200, 68, -0.36}, 120);
    }

    static PumpCurve curve(double[] head, double[] watts, double to) {
        return PumpCurve.of(
                        "P-B",
                        SPEED,
                        WATER,
                        new CurveFormula(
                                Polynomial.of(head).ofScaled(3600),
                                Polynomial.of(watts).ofScaled(3600),
                                Flow.ZERO,
                                m3ph(to)))
                .withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
    }

    static PumpSet set(PumpCurve curve, LossModel losses) {
        Power rated = Power.kilowatts(11);
        DriveTrain train = DriveTrain.of(Motor.ofClass(rated, 3, 4), Drive.reference(rated), losses);
        return PumpSet.of(curve, train).withMinimumSpeed(SPEED.times(0.25));
    }

    /** The turning pump with a motor of 11 kW and its drive, losses apart. */
    public static PumpSet set() {
        return set(turning(), LossModel.named("separate"));
    }

    public static FlowEstimator estimator(ErrorBudget errors) {
        return FlowEstimator.of(ThroughLosses.of(set()), errors);
    }

    /** Power 1 %, speed 0.2 %, head 1 %, the power of the map within 2 % and its head within 1 %. */
    public static ErrorBudget usual() {
        return ErrorBudget.NONE
                .with(Cause.POWER_READING, 0.01, 0)
                .with(Cause.SPEED_READING, 0.002, 0)
                .with(Cause.HEAD_READING, 0.01, 0)
                .with(Cause.POWER_MAP, 0.02, 0)
                .with(Cause.HEAD_MAP, 0.01, 0);
    }

    /** Returns what would be read at a flow in m³/h and a share of speed without any error. */
    static Reading reading(PowerMap map, double flow, double s) {
        double q = flow / 3600;
        return Reading.of(Power.watts(map.wireWatts(q, s)), SPEED.times(s)).with(Head.metres(map.headMetres(q, s)));
    }
}

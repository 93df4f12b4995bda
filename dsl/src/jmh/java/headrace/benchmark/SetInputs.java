package headrace.benchmark;

import headrace.curve.PumpCurve;
import headrace.drive.Drive;
import headrace.drive.DriveLosses;
import headrace.drive.DriveTrain;
import headrace.drive.FittedLosses;
import headrace.drive.LossPoint;
import headrace.drive.Motor;
import headrace.pump.PumpSet;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;

/** The invented motor and drive of the workloads that go to the wire: 11 kW, losses given as formulas. */
final class SetInputs {
    private static final double RATED_KILOWATTS = 11;
    private static final double[][] MOTOR_POINTS = {
        {.9, 1}, {.5, 1}, {.25, 1}, {.9, .5}, {.5, .5}, {.5, .25}, {.25, .25}
    };
    private static final double[][] DRIVE_POINTS = {
        {0, .25}, {0, .5}, {0, 1}, {.5, .25}, {.5, .5}, {.5, 1}, {.9, .5}, {.9, 1}
    };

    private SetInputs() {}

    static PumpSet of(PumpCurve curve) {
        double l = Math.log10(RATED_KILOWATTS);
        double efficiency = (0.0773 * l * l * l - 1.8951 * l * l + 9.2984 * l + 83.7025) / 100;
        double full = RATED_KILOWATTS * (1 / efficiency - 1);
        Power rated = Power.kilowatts(RATED_KILOWATTS);
        List<LossPoint> motor = points(
                MOTOR_POINTS,
                (s, t) -> full * (0.22 * Math.pow(s, 1.6) + 0.50 * t * t + 0.10 * Math.pow(s, 2.5) + 0.18 * t * t * s));
        List<LossPoint> drive = points(
                DRIVE_POINTS, (f, i) -> 0.055 + 0.020 * f + 0.090 * i + 0.060 * f * i + 0.110 * i * i);
        return PumpSet.of(
                curve,
                DriveTrain.of(
                        Motor.ofPlate(rated, 4, Ratio.of(efficiency)),
                        Drive.declared(rated, DriveLosses.of(drive)).withMagnetisingCurrent(Ratio.of(0.45)),
                        FittedLosses.of(motor, new FittedLosses.Exponents(1.6, 2.5))));
    }

    private static List<LossPoint> points(double[][] at, DoubleBinaryOperator kilowatts) {
        List<LossPoint> points = new ArrayList<>();
        for (double[] each : at) {
            points.add(new LossPoint(
                    Ratio.of(each[0]),
                    Ratio.of(each[1]),
                    Power.kilowatts(kilowatts.applyAsDouble(each[0], each[1]))));
        }
        return points;
    }
}

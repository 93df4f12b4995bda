package headrace.selection;

import headrace.drive.Motor;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Speed;
import java.util.OptionalInt;

/**
 * Rated powers of standard motors, and the number of poles that turns at a speed.
 *
 * <p>Source: the rated powers for which EU 2019/1781 Annex I lists least efficiencies, 0.75 to 1000 kW.
 */
final class StandardRatings {
    private static final double[] KILOWATTS = {
        0.75, 1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55, 75, 90, 110, 132, 160, 200, 250, 315,
        355, 400, 450, 500, 560, 630, 710, 800, 900, 1000
    };
    private static final double ROUNDING = 1e-9;

    private StandardRatings() {}

    static Power atLeast(Power needed) {
        for (double rating : KILOWATTS) {
            if (needed.toKilowatts() <= rating * (1 + ROUNDING)) {
                return Power.kilowatts(rating);
            }
        }
        throw new Refusal(
                SelectionProblem.NO_MOTOR_LARGE_ENOUGH,
                "The pump takes up to " + needed,
                "Standard motors go up to 1000 kW",
                "Divide the duty among several pumps");
    }

    /** Returns the poles of the file, or those of the motor whose speed lies nearest above. */
    static int poles(OptionalInt stated, Speed speed) {
        if (stated.isPresent()) {
            return stated.getAsInt();
        }
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int poles = 2; poles <= 8; poles += 2) {
            Motor motor = Motor.ofClass(Power.kilowatts(1.5), 3, poles);
            double slip = motor.synchronousSpeed(speed)
                    .map(synchronous -> 1 - speed.over(synchronous).value())
                    .orElse(Double.POSITIVE_INFINITY);
            if (slip < least) {
                least = slip;
                best = poles;
            }
        }
        if (best == 0) {
            throw new Refusal(
                    SelectionProblem.NO_MOTOR_FOR_SPEED,
                    "The pump was tested at " + speed,
                    "Motors of 2 to 8 poles turn at 85 to 100 % of 3000, 1500, 1000 and 750 rpm on 50 Hz, and 1.2 times"
                            + " that on 60 Hz",
                    "State the poles in its file, or convert the test to another speed");
        }
        return best;
    }
}

package headrace.drive;

import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import java.util.function.Function;

/**
 * A declared or measured loss at one speed and torque, as shares of their rated values; of a drive, at one frequency
 * and torque current.
 *
 * @param speed the speed of a motor, or the frequency of a drive, 0 to 120 %
 * @param torque the torque of a motor, or the torque current of a drive, 0 to 150 %
 * @param loss what is lost there, above 0
 */
public record LossPoint(Ratio speed, Ratio torque, Power loss) {
    /** Refuses a point that cannot be. */
    public LossPoint {
        boolean possible = speed.value() >= 0
                && speed.value() <= 1.2
                && torque.value() >= 0
                && torque.value() <= 1.5
                && loss.watts() > 0;
        if (!possible) {
            throw new Refusal(
                    DriveProblem.IMPOSSIBLE_LOSS_POINT,
                    "Asked for a loss of " + loss + " at " + speed + " speed or frequency and " + torque
                            + " torque or torque current",
                    "Speeds lie from 0 to 120 %, torques from 0 to 150 % of rated, and losses above 0",
                    "Look for an exchanged column, or a share written as a number");
        }
    }

    /** The least and greatest value of something over points. */
    record Range(double least, double most) {
        static Range of(List<LossPoint> points, Function<LossPoint, Ratio> part) {
            return new Range(
                    points.stream()
                            .mapToDouble(point -> part.apply(point).value())
                            .min()
                            .orElse(0),
                    points.stream()
                            .mapToDouble(point -> part.apply(point).value())
                            .max()
                            .orElse(0));
        }

        /** Returns the range up to rated where it reaches 90 %, as the points of the standards do. */
        Range towardsRated() {
            return most >= 0.9 - DriveTrain.ROUNDING ? new Range(least, Math.max(1, most)) : this;
        }

        boolean holds(double value) {
            return value >= least - DriveTrain.ROUNDING && value <= most + DriveTrain.ROUNDING;
        }

        @Override
        public String toString() {
            return least == most ? Ratio.of(most).toString() : Ratio.of(least) + " to " + Ratio.of(most);
        }
    }
}

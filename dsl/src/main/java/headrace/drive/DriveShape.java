package headrace.drive;

import headrace.problem.Refusal;
import headrace.units.Numbers;

/**
 * How the loss of a drive follows frequency {@code f} and torque current {@code i}, both as shares of their rated
 * values: {@code standing + current·i + square·i² + switching·i·f/0.9} of its loss at the reference point.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of the loss at f = 0.9 and i = 1; they add up to 1, so that this point gives the reference loss.
 *   <dt>Limits
 *   <dd>f from 0 to 1 and i from 0 to 1. Above 0 everywhere, because the standing share is.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_LOSSES}.
 *   <dt>Source
 *   <dd>The reference point is that of EU 2019/1781 and IEC 61800-9-2; the shape is an assumption.
 * </dl>
 *
 * @param standing the share that is lost even at standstill: supply of the electronics, fans, filters; above 0
 * @param current the share that goes with the current: voltage drop of the semiconductors
 * @param square the share that goes with its square: resistances
 * @param switching the share that goes with current and frequency
 */
public record DriveShape(double standing, double current, double square, double switching) {
    /** The shape assumed by this project where the losses of the drive are declared at one point only. */
    public static final DriveShape ASSUMED = new DriveShape(0.40, 0.20, 0.28, 0.12);

    private static final double REFERENCE_FREQUENCY = 0.9;

    /** Refuses shares below 0, no standing share, and shares that do not add up to 1. */
    public DriveShape {
        boolean each = standing > 0 && current >= 0 && square >= 0 && switching >= 0;
        if (!each || !(Math.abs(standing + current + square + switching - 1) <= 1e-9)) {
            throw new Refusal(
                    DriveProblem.IMPOSSIBLE_LOSSES,
                    "Asked for drive losses with the shares standing " + standing + ", current " + current + ", square "
                            + square + " and switching " + switching,
                    "They add up to 1, none is below 0, and the standing share is above 0",
                    "Divide the four by their sum");
        }
    }

    /** Returns the losses of a drive of that reference loss. */
    DriveTerms.Watts times(double referenceWatts) {
        return new DriveTerms.Watts(
                referenceWatts * standing,
                0,
                referenceWatts * current,
                referenceWatts * switching / REFERENCE_FREQUENCY,
                referenceWatts * square);
    }

    String statement() {
        return "drive loss over reference loss = " + Numbers.print(standing) + " + " + Numbers.print(current) + "·i + "
                + Numbers.print(square) + "·i² + " + Numbers.print(switching) + "·i·f/0.9";
    }
}

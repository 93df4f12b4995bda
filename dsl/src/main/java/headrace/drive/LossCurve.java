package headrace.drive;

import headrace.problem.Notes;
import java.util.List;

/** The losses of one motor, with its drive or on the mains, over load and speed: a loss model with its numbers in. */
public interface LossCurve {
    /**
     * Returns all losses in W.
     *
     * @param shaftWatts the power at the shaft in W, not below 0
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     */
    double watts(double shaftWatts, double speedRatio);

    /** Returns the same losses one by one; they add up to {@link #watts}. */
    List<Losses.Part> parts(double shaftWatts, double speedRatio);

    /** Returns what is to be said of a load: which limits of the model it touches. */
    Notes notes(double shaftWatts, double speedRatio);
}

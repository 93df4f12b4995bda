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

    /**
     * Fills the losses of motor and drive at the first loads and one speed.
     *
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     * @param arrays the loads, and room for the losses
     * @param count how many loads
     */
    default void fill(double speedRatio, LossArrays arrays, int count) {
        for (int i = 0; i < count; i++) {
            arrays.motors()[i] = watts(arrays.shafts()[i], speedRatio);
            arrays.drives()[i] = 0;
        }
    }

    /** Returns the same losses one by one; they add up to {@link #watts}. */
    List<Losses.Part> parts(double shaftWatts, double speedRatio);

    /** Returns what is to be said of a load: which limits of the model it touches. */
    Notes notes(double shaftWatts, double speedRatio);
}

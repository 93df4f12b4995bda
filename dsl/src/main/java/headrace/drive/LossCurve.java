package headrace.drive;

import headrace.numeric.Roots;
import headrace.numeric.Slope;
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

    /**
     * Returns the power at the shaft in W at which shaft and losses together take so much, or minus infinity where that
     * is less than is lost without load.
     *
     * @param takenWatts what shaft and losses take in W; grows with the power at the shaft
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     */
    default double shaftWatts(double takenWatts, double speedRatio) {
        if (!(takenWatts >= watts(0, speedRatio))) {
            return Double.NEGATIVE_INFINITY;
        }
        return Roots.between(shaft -> shaft + watts(shaft, speedRatio) - takenWatts, 0, takenWatts);
    }

    /**
     * Fills the powers at the shaft for many readings, as {@link #shaftWatts} gives each.
     *
     * @param taken what shaft and losses take in W
     * @param speedRatios the speed of each as a share of the motor's rated speed, above 0
     * @param shafts to be filled
     * @param count how many
     */
    default void fillShafts(double[] taken, double[] speedRatios, double[] shafts, int count) {
        for (int i = 0; i < count; i++) {
            shafts[i] = shaftWatts(taken[i], speedRatios[i]);
        }
    }

    /**
     * Fills by how much the losses grow with the load and with the speed, at the first loads and one speed.
     *
     * @param speedRatio the speed as a share of the motor's rated speed, above 0
     * @param slopes the loads, and room for the slopes
     * @param count how many loads
     */
    default void fillSlopes(double speedRatio, LossSlopes slopes, int count) {
        for (int i = 0; i < count; i++) {
            double shaft = slopes.shafts()[i];
            slopes.perShaft()[i] = Slope.at(load -> watts(load, speedRatio), shaft);
            slopes.perSpeed()[i] = Slope.at(speed -> watts(shaft, speed), speedRatio);
        }
    }

    /** Returns the same losses one by one; they add up to {@link #watts}. */
    List<Losses.Part> parts(double shaftWatts, double speedRatio);

    /** Returns what is to be said of a load: which limits of the model it touches. */
    Notes notes(double shaftWatts, double speedRatio);
}

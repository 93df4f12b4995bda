package headrace.drive;

/**
 * Many loads, and room for what motor and drive lose there.
 *
 * <p>The arrays are the caller's own, all of one length, and are not copied. Where a model does not tell motor and
 * drive apart, the loss of both stands with the motor.
 *
 * @param shafts the powers at the shaft in W, not below 0
 * @param motors to be filled with losses of the motor in W
 * @param drives to be filled with losses of the drive in W
 */
public record LossArrays(double[] shafts, double[] motors, double[] drives) {
    /** Refuses, as a mistake of the program, arrays of different lengths. */
    public LossArrays {
        if (motors.length != shafts.length || drives.length != shafts.length) {
            throw new IllegalArgumentException("The arrays of loads and losses differ in length");
        }
    }

    /** Returns the arrays for some loads, with room for the losses. */
    public static LossArrays of(double[] shafts) {
        return new LossArrays(shafts, new double[shafts.length], new double[shafts.length]);
    }
}

package headrace.drive;

/**
 * Many loads, and room for how the losses of motor and drive grow there.
 *
 * <p>The arrays are the caller's own, all of one length, and are not copied.
 *
 * @param shafts the powers at the shaft in W, not below 0
 * @param perShaft to be filled with W of loss for each W more at the shaft
 * @param perSpeed to be filled with W of loss for the whole of rated speed more
 */
public record LossSlopes(double[] shafts, double[] perShaft, double[] perSpeed) {
    /** Refuses, as a mistake of the program, arrays of different lengths. */
    public LossSlopes {
        if (perShaft.length != shafts.length || perSpeed.length != shafts.length) {
            throw new IllegalArgumentException("The arrays of loads and slopes differ in length");
        }
    }

    /** Returns the arrays for some loads, with room for the slopes. */
    public static LossSlopes of(double[] shafts) {
        return new LossSlopes(shafts, new double[shafts.length], new double[shafts.length]);
    }
}

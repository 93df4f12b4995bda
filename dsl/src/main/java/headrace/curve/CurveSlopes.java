package headrace.curve;

/**
 * Room for how head and shaft power change at many points of a curve.
 *
 * <p>The arrays are the caller's own, all of one length, and are not copied.
 *
 * @param headOverFlow to be filled with m for each m³/s more
 * @param powerOverFlow to be filled with W for each m³/s more
 * @param headOverSpeed to be filled with m for the whole of the curve's speed more, at the same flow
 * @param powerOverSpeed to be filled with W for the whole of the curve's speed more, at the same flow
 */
public record CurveSlopes(
        double[] headOverFlow, double[] powerOverFlow, double[] headOverSpeed, double[] powerOverSpeed) {
    /** Refuses, as a mistake of the program, arrays of different lengths. */
    public CurveSlopes {
        int n = headOverFlow.length;
        if (powerOverFlow.length != n || headOverSpeed.length != n || powerOverSpeed.length != n) {
            throw new IllegalArgumentException("The arrays of slopes differ in length");
        }
    }

    /** Returns room for so many points. */
    public static CurveSlopes of(int points) {
        return new CurveSlopes(new double[points], new double[points], new double[points], new double[points]);
    }
}

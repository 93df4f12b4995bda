package headrace.curve;

/**
 * Many flows and speeds, and room for what a curve gives there.
 *
 * <p>The arrays are the caller's own, all of one length, and are not copied.
 *
 * @param flows the flows in m³/s
 * @param speeds the speeds as shares of the curve's own
 * @param heads to be filled with heads in m
 * @param powers to be filled with shaft powers in W
 * @param efficiencies to be filled with efficiencies
 */
public record CurveArrays(double[] flows, double[] speeds, double[] heads, double[] powers, double[] efficiencies) {
    /** Refuses, as a mistake of the program, arrays of different lengths. */
    public CurveArrays {
        int n = flows.length;
        if (speeds.length != n || heads.length != n || powers.length != n || efficiencies.length != n) {
            throw new IllegalArgumentException("The arrays of flows, speeds and results differ in length");
        }
    }

    /** Returns the arrays for so many points, with room for the results. */
    public static CurveArrays of(double[] flows, double[] speeds) {
        int n = flows.length;
        return new CurveArrays(flows, speeds, new double[n], new double[n], new double[n]);
    }

    /** Returns how many points there are. */
    public int count() {
        return flows.length;
    }
}

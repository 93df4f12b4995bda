package headrace.estimate;

import headrace.liquid.Liquid;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Speed;

/**
 * Wire power and head of a pump set over flow and speed: what an estimate reads backwards.
 *
 * <p>Methods on bare numbers take flows in m³/s and speeds as shares of {@link #speed()}, and check no range.
 */
public sealed interface PowerMap extends Traced permits ThroughLosses, MeasuredPowerMap {
    /** Returns the name of the pump. */
    String name();

    /** Returns the speed that shares are of. */
    Speed speed();

    /** Returns the flow of best efficiency at that speed. */
    Flow bestFlow();

    /** Returns the least speed for which it holds, as a share. */
    double slowest();

    /** Returns the greatest speed for which it holds, as a share. */
    double fastest();

    /** Returns the least flow at a speed. */
    double lowestFlow(double s);

    /** Returns the greatest flow at a speed. */
    double highestFlow(double s);

    /** Returns the wire power in W. */
    default double wireWatts(double q, double s) {
        return wireWatts(q, s, 1, 1);
    }

    /**
     * Returns the wire power in W of a pump that takes more or less than its map.
     *
     * @param pump its own power as a multiple of that of the map
     * @param losses what motor and drive lose as a multiple of that of their model
     */
    double wireWatts(double q, double s, double pump, double losses);

    /** Returns the shaft power in W. */
    double shaftWatts(double q, double s);

    /** Returns whether shaft power is known apart from wire power. */
    boolean knowsShaft();

    /**
     * Returns the power in W that the factors move, for a wire power in W: the shaft power, or the wire power itself
     * where the map was measured there. Minus infinity where less was read than is lost without load.
     */
    double movedWatts(double wireWatts, double s);

    /** Returns the power in W that the factors move as it was before them, at a flow. */
    double unmovedWattsAt(double q, double s);

    /** Returns the head in m. */
    double headMetres(double q, double s);

    /**
     * Returns the flows at a speed between which the power only rises or only falls, the ends of the range included.
     */
    double[] powerStops(double s);

    /** Fills the first flows of a row at a speed. */
    void fill(double s, MapRow row, int count);

    /** Returns how the map was moved to meet readings. */
    MapFactors factors();

    /** Returns this map moved to meet readings, with how that was done in words; earlier factors are replaced. */
    PowerMap calibrated(MapFactors factors, String how);

    /** Returns whether it was held against readings on site. */
    boolean isCalibrated();

    /** Returns this map in another liquid. */
    PowerMap in(Liquid liquid);
}

package headrace.trend;

import headrace.numeric.StraightLine;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Ratio;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A log held against the pump map: how the readings of a reference stand to the map, and what is left over hour by
 * hour.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI inside.
 *   <dt>Limits
 *   <dd>The head is set against the map by one factor, the power by a line, the head of the plant by k·Q², all fitted
 *       to the rows of the reference. Rows with the pump at rest or outside the tested range are left out. Residuals
 *       are means of clock hours of which half the rows are there; the mean is taken of the residuals, never the
 *       residual of means.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TOO_SHORT_LOG} or {@code CHANNEL_MISSING}.
 *   <dt>Source
 *   <dd>Own; CV(RMSE) and NMBE as {@link FitQuality} has them.
 * </dl>
 */
public final class MapCheck implements Traced {
    private static final int LEAST_ROWS = 24;

    private final TrendLog log;
    private final MapReadings readings;
    private final MapPower of;
    private final long until;
    private final int reference;
    private final double headFactor;
    private final StraightLine powerLine;
    private final double plantFactor;
    private final Hours hours;
    private final FitQuality quality;

    private MapCheck(TrendLog log, MapReadings readings, MapPower of, long until) {
        this.log = log;
        this.readings = readings;
        this.of = of;
        this.until = until;
        this.reference = readings.before(until);
        requireReference();
        this.headFactor = readings.metres == null ? 1 : factor(readings.metres, readings.mapMetres);
        this.powerLine = StraightLine.through(readings.mapWatts, readings.watts, reference);
        double[] squares = readings.plant == null ? null : squares(readings.flow);
        this.plantFactor = squares == null ? 0 : factor(readings.plant, squares);
        double[] expected = expectedWatts();
        this.quality = FitQuality.of(readings.watts, expected, reference, 2);
        this.hours = residuals(expected, squares);
    }

    /**
     * Returns a cleaned log held against the map of a pump set.
     *
     * @param of which power of the map the logged power is held against
     * @param until where the reference ends; the readings before it are taken for sound
     */
    public static MapCheck of(TrendLog log, PumpSet set, MapPower of, Instant until) {
        return new MapCheck(log, MapReadings.of(log, set, of), of, until.getEpochSecond());
    }

    private void requireReference() {
        if (reference < LEAST_ROWS) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked to hold " + log.name() + " against the pump map with " + reference
                            + " rows of reference before " + log.clock(until),
                    "It takes " + LEAST_ROWS + " rows or more with the pump running inside its tested range",
                    "Let the reference last longer, with until:");
        }
    }

    /** Returns the factor that sets one column nearest another over the reference. */
    private double factor(double[] measured, double[] map) {
        double products = 0;
        double squares = 0;
        for (int i = 0; i < reference; i++) {
            products += measured[i] * map[i];
            squares += map[i] * map[i];
        }
        return squares > 0 ? products / squares : 1;
    }

    private static double[] squares(double[] flow) {
        return Arrays.stream(flow).map(q -> q * q).toArray();
    }

    private double[] expectedWatts() {
        double[] expected = new double[readings.count];
        for (int i = 0; i < expected.length; i++) {
            expected[i] = powerLine.at(readings.mapWatts[i]);
        }
        return expected;
    }

    private Hours residuals(double[] expected, double[] squares) {
        double[][] columns = {
            less(readings.watts, expected, 1),
            readings.metres == null ? new double[0] : less(readings.metres, readings.mapMetres, headFactor),
            readings.plant == null ? new double[0] : less(readings.plant, squares, plantFactor)
        };
        return Hours.of(
                readings.seconds,
                readings.count,
                log.step(),
                Stream.of(columns).filter(column -> column.length > 0).toArray(double[][]::new));
    }

    private static double[] less(double[] measured, double[] map, double factor) {
        double[] off = new double[map.length];
        for (int i = 0; i < off.length; i++) {
            off[i] = measured[i] - factor * map[i];
        }
        return off;
    }

    /** Returns the log. */
    public TrendLog log() {
        return log;
    }

    /** Returns the pump set. */
    public PumpSet set() {
        return readings.set;
    }

    /** Returns where the reference ends. */
    public Instant until() {
        return Instant.ofEpochSecond(until);
    }

    /** Returns the measured head over that of the map, in the reference. */
    public Optional<Ratio> headFactor() {
        return readings.metres == null ? Optional.empty() : Optional.of(Ratio.of(headFactor));
    }

    /** Returns the measured power in W over that of the map in W, in the reference. */
    public StraightLine powerLine() {
        return powerLine;
    }

    /**
     * Returns the measured head in m over the square of flow in (m³/s)², in the reference: the head that control keeps
     * at no flow, and what the circuit takes.
     */
    public Optional<StraightLine> systemLine() {
        return readings.metres == null
                ? Optional.empty()
                : Optional.of(StraightLine.through(squares(readings.flow), readings.metres, reference));
    }

    /** Returns the head of the plant over the square of flow in m/(m³/s)², in the reference. */
    public double plantFactor() {
        return plantFactor;
    }

    /** Returns how well the line of the power meets the rows of the reference. */
    public FitQuality quality() {
        return quality;
    }

    /** Returns the sum of power less the line over the sum of power, after the reference. */
    public Optional<Ratio> biasAfter() {
        double off = 0;
        double sum = 0;
        for (int i = reference; i < readings.count; i++) {
            off += readings.watts[i] - powerLine.at(readings.mapWatts[i]);
            sum += readings.watts[i];
        }
        return sum > 0 ? Optional.of(Ratio.of(off / sum)) : Optional.empty();
    }

    /** Returns the residuals hour by hour: of power, and of head and plant head where they are logged. */
    public List<HourSeries> residuals() {
        return Stream.of(Channel.POWER, Channel.HEAD, Channel.PLANT_HEAD)
                .flatMap(channel -> residual(channel).stream())
                .toList();
    }

    /** Returns the residual of power, head or plant head hour by hour, if it is logged. */
    public Optional<HourSeries> residual(Channel channel) {
        List<Channel> there = Stream.of(Channel.POWER, Channel.HEAD, Channel.PLANT_HEAD)
                .filter(log::has)
                .toList();
        int at = there.indexOf(channel);
        return at < 0
                ? Optional.empty()
                : Optional.of(
                        new HourSeries(channel, hours.hours(), hours.means()[at], hours.before(Hours.hour(until))));
    }

    MapReadings readings() {
        return readings;
    }

    /** Returns the power of the map in W at a flow in m³/s and a share of the curve's speed. */
    double mapWatts(double q, double s) {
        return of == MapPower.WIRE
                ? readings.set.wireWatts(q, s)
                : readings.set.curve().shaftWatts(q, s);
    }

    int reference() {
        return reference;
    }

    @Override
    public Notes notes() {
        Notes notes = log.notes().and(readings.set.notes()).and(readings.notes());
        return quality.withinHourlyLimits()
                ? notes
                : notes.with(
                        TrendProblem.BASELINE_TOO_LOOSE,
                        "The power of the reference scatters by " + quality.cvRmse() + " and leans by "
                                + quality.nmbe() + " about the line of the map; ASHRAE Guideline 14 has at most "
                                + FitQuality.MOST_SCATTER + " and " + FitQuality.MOST_BIAS);
    }

    @Override
    public Basis basis() {
        return log.basis()
                .and(readings.set.basis())
                .with("reference until " + log.clock(until) + ", power held against the " + of.words());
    }

    @Override
    public String toString() {
        return log.name() + " against the map of " + readings.set.curve().name() + ": " + quality;
    }
}

package headrace.trend;

import headrace.numeric.Quantiles;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The load that a log shows: how its flow divides over shares of design flow, and what power goes with it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows as shares of design flow, W.
 *   <dt>Limits
 *   <dd>Twenty bins of equally many rows, and cells of 5 % of design flow. Every row stands for the usual step of the
 *       log; what is missing is not filled in.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_TREND_CHOICE}, and as {@link TrendLog} gives them.
 *   <dt>Source
 *   <dd>Own.
 * </dl>
 */
public final class LoggedLoad implements Traced {
    private static final int BINS = 20;
    private static final double CELL = 0.05;

    /** Loads that lie this share of a cell below its edge are on it. */
    private static final double ROUNDING = 1e-9;

    private final TrendLog log;
    private final Flow design;
    private final List<Bin> bins;
    private final int[] cells;
    private final double wattSeconds;

    /**
     * A bin of equally many rows.
     *
     * @param from the least load that belongs to it
     * @param to where the next begins
     * @param rows how many rows it has
     * @param load the mean load
     * @param power the mean wire power
     */
    public record Bin(Ratio from, Ratio to, int rows, Ratio load, Power power) {}

    private LoggedLoad(TrendLog log, Flow design, List<Bin> bins, int[] cells) {
        this.log = log;
        this.design = design;
        this.bins = bins;
        this.cells = cells;
        this.wattSeconds = sum(log.column(Channel.POWER), log.count()) * log.step();
    }

    /** Returns the load of a cleaned log that has a flow. */
    public static LoggedLoad of(TrendLog log, Flow design) {
        log.require(BINS, "the load", Channel.FLOW, Channel.POWER);
        if (!(design.si() > 0)) {
            throw new Refusal(
                    TrendProblem.IMPOSSIBLE_TREND_CHOICE,
                    "Asked for loads as shares of a design flow of " + design,
                    "A design flow is above 0",
                    "Give the flow that the circuit was designed for");
        }
        int n = log.count();
        double[] load = new double[n];
        double[] flow = log.column(Channel.FLOW);
        for (int i = 0; i < n; i++) {
            load[i] = Math.max(0, flow[i]) / design.si();
        }
        return new LoggedLoad(log, design, bins(load, log.column(Channel.POWER)), cells(load));
    }

    private static List<Bin> bins(double[] load, double[] watts) {
        double[] edges = Quantiles.of(load)
                .at(IntStream.rangeClosed(0, BINS).mapToDouble(k -> k * CELL).toArray());
        int[] rows = new int[BINS];
        double[] loads = new double[BINS];
        double[] powers = new double[BINS];
        for (int i = 0; i < load.length; i++) {
            int bin = bin(edges, load[i]);
            rows[bin]++;
            loads[bin] += load[i];
            powers[bin] += watts[i];
        }
        List<Bin> bins = new ArrayList<>();
        for (int k = 0; k < BINS; k++) {
            if (rows[k] > 0) {
                bins.add(new Bin(
                        Ratio.of(edges[k]),
                        Ratio.of(edges[k + 1]),
                        rows[k],
                        Ratio.of(loads[k] / rows[k]),
                        Power.watts(powers[k] / rows[k])));
            }
        }
        return List.copyOf(bins);
    }

    /** Returns the last bin whose lower edge is not above a load, in five steps. */
    private static int bin(double[] edges, double load) {
        int low = 0;
        int high = BINS;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (load >= edges[middle]) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static int[] cells(double[] load) {
        double most = 0;
        for (double each : load) {
            most = Math.max(most, each);
        }
        int[] cells = new int[cell(most) + 1];
        for (double each : load) {
            cells[cell(each)]++;
        }
        return cells;
    }

    static int cell(double load) {
        return (int) (load / CELL + ROUNDING);
    }

    private static double sum(double[] values, int count) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += values[i];
        }
        return sum;
    }

    /** Returns the log. */
    public TrendLog log() {
        return log;
    }

    /** Returns the design flow. */
    public Flow design() {
        return design;
    }

    /** Returns the bins of equally many rows, the least load first; a load that many rows share may empty some. */
    public List<Bin> bins() {
        return bins;
    }

    /** Returns the rows in each 5 % of design flow, from no flow on. */
    public int[] cells() {
        return cells.clone();
    }

    /** Returns how long the load was in each 5 % of design flow, from no flow on. */
    public List<Time> times() {
        return IntStream.of(cells).mapToObj(rows -> log.interval().times(rows)).toList();
    }

    /** Returns the energy of the rows. */
    public Energy energy() {
        return Energy.joules(wattSeconds);
    }

    /** Returns the mean load. */
    public Ratio mean() {
        return Ratio.of(bins.stream()
                        .mapToDouble(bin -> bin.load().value() * bin.rows())
                        .sum()
                / log.count());
    }

    @Override
    public Notes notes() {
        return log.notes();
    }

    @Override
    public Basis basis() {
        return log.basis().with("loads as shares of the design flow of " + design);
    }

    @Override
    public String toString() {
        return log.name() + ": " + mean() + " of " + design + " on average, " + energy() + " in " + log.covered();
    }
}

package headrace.trend;

import headrace.curve.CurveArrays;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.Arrays;

/** The rows of a log beside what the pump map has at the same flow and speed; those outside the map are left out. */
final class MapReadings {
    private static final int BLOCK = 4096;

    /** Below this share of rated speed the pump stands still. */
    private static final double STILL = 0.05;

    final PumpSet set;
    final long[] seconds;
    final double[] flow;
    final double[] share;
    final double[] watts;
    final double[] metres;
    final double[] plant;
    final double[] mapMetres;
    final double[] mapWatts;
    final int count;

    private final TrendLog log;
    private final int outside;

    private MapReadings(TrendLog log, PumpSet set, MapPower of) {
        this.log = log;
        this.set = set;
        int n = log.count();
        double curveSpeed = set.curve().speed().si();
        double[] q = log.column(Channel.FLOW);
        double[] speeds = log.column(Channel.SPEED);
        double[] shares = new double[n];
        int[] kept = new int[n];
        int still = 0;
        int some = 0;
        for (int i = 0; i < n; i++) {
            shares[i] = speeds[i] / curveSpeed;
            if (shares[i] < STILL) {
                still++;
            } else if (set.curve().covers(q[i], shares[i])) {
                kept[some++] = i;
            }
        }
        count = some;
        outside = n - still - some;
        int[] rows = some == n ? null : Arrays.copyOf(kept, some);
        seconds = taken(log.rows().seconds(), rows, some);
        flow = taken(q, rows, some);
        share = taken(shares, rows, some);
        watts = taken(log.column(Channel.POWER), rows, some);
        metres = log.has(Channel.HEAD) ? taken(log.column(Channel.HEAD), rows, some) : null;
        plant = log.has(Channel.PLANT_HEAD) ? taken(log.column(Channel.PLANT_HEAD), rows, some) : null;
        mapMetres = new double[some];
        mapWatts = new double[some];
        fill(of);
    }

    /** Returns the readings of a cleaned log that has a flow. */
    static MapReadings of(TrendLog log, PumpSet set, MapPower of) {
        log.require(2, "what the pump map says", Channel.FLOW, Channel.SPEED, Channel.POWER);
        return new MapReadings(log, set, of);
    }

    private static double[] taken(double[] column, int[] rows, int count) {
        if (rows == null) {
            return column.length == count ? column : Arrays.copyOf(column, count);
        }
        double[] taken = new double[count];
        for (int i = 0; i < count; i++) {
            taken[i] = column[rows[i]];
        }
        return taken;
    }

    private static long[] taken(long[] column, int[] rows, int count) {
        if (rows == null) {
            return column;
        }
        long[] taken = new long[count];
        for (int i = 0; i < count; i++) {
            taken[i] = column[rows[i]];
        }
        return taken;
    }

    /** Fills the map a block at a time, so that the arrays of the curve stay small. */
    private void fill(MapPower of) {
        CurveArrays arrays = CurveArrays.of(new double[BLOCK], new double[BLOCK]);
        try (Steps steps = Work.steps("holding the log against the map", count)) {
            for (int from = 0; from < count; from += BLOCK) {
                steps.at(from);
                int some = Math.min(BLOCK, count - from);
                System.arraycopy(flow, from, arrays.flows(), 0, some);
                System.arraycopy(share, from, arrays.speeds(), 0, some);
                set.curve().fill(arrays);
                System.arraycopy(arrays.heads(), 0, mapMetres, from, some);
                System.arraycopy(arrays.powers(), 0, mapWatts, from, some);
                if (of == MapPower.WIRE) {
                    double ofRated = set.curve().speed().si() / set.ratedSpeed().si();
                    for (int i = from; i < from + some; i++) {
                        mapWatts[i] = set.driveTrain().inputWatts(Math.max(0, mapWatts[i]), share[i] * ofRated);
                    }
                }
            }
            steps.at(count);
        }
    }

    Notes notes() {
        return outside == 0
                ? Notes.NONE
                : Notes.NONE.with(
                        TrendProblem.ROWS_OUTSIDE_MAP,
                        Ratio.of((double) outside / log.count()) + " of the rows lie outside the tested range of "
                                + set.curve().name() + " and are not held against its map");
    }

    /** Returns how many rows lie before a time. */
    int before(long second) {
        int at = Arrays.binarySearch(seconds, 0, count, second);
        return at >= 0 ? at : -at - 1;
    }
}

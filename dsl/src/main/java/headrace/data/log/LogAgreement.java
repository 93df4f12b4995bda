package headrace.data.log;

import headrace.pump.PumpSet;
import headrace.trend.Channel;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * How far the readings of a log, in given units, are from what the pump map says of each other: the median over some
 * rows of |ln(measured/map)|. A worn pump is off by some per cent, a wrong unit by a factor of three.
 */
final class LogAgreement {
    /** No rows can be compared. */
    static final double UNKNOWN = Double.NaN;

    private static final int SAMPLES = 500;

    private final PumpSet set;
    private final LogRows rows;
    private final Map<Channel, Integer> where;

    LogAgreement(PumpSet set, LogRows rows, Map<Channel, Integer> where) {
        this.set = set;
        this.rows = rows;
        this.where = where;
    }

    /** Returns how far power is from the map with these units of power, speed and flow. */
    double ofPower(Map<Channel, Scale> scales) {
        return median(scales, Channel.POWER);
    }

    /** Returns how far the head is from the map with these units of speed, flow and head. */
    double ofHead(Map<Channel, Scale> scales) {
        return median(scales, Channel.HEAD);
    }

    private double median(Map<Channel, Scale> scales, Channel held) {
        boolean there = scales.keySet().containsAll(List.of(Channel.SPEED, Channel.FLOW, held));
        if (!there) {
            return UNKNOWN;
        }
        double[] off = new double[SAMPLES];
        int count = 0;
        for (int k = 0; k < SAMPLES && rows.count > 0; k++) {
            int row = (int) ((long) k * rows.count / SAMPLES);
            double value = distance(scales, held, row);
            if (!Double.isNaN(value)) {
                off[count++] = value;
            }
        }
        Arrays.sort(off, 0, count);
        return count < SAMPLES / 20 ? UNKNOWN : off[count / 2];
    }

    private double distance(Map<Channel, Scale> scales, Channel held, int row) {
        double q = si(scales, Channel.FLOW, row);
        double s = si(scales, Channel.SPEED, row) / set.curve().speed().si();
        double measured = si(scales, held, row);
        if (!(s > 0 && q > 0 && measured > 0)) {
            return UNKNOWN;
        }
        double map = held == Channel.POWER ? set.wireWatts(q, s) : set.curve().headMetres(q, s);
        return map > 0 ? Math.abs(Math.log(measured / map)) : Double.POSITIVE_INFINITY;
    }

    private double si(Map<Channel, Scale> scales, Channel channel, int row) {
        return scales.get(channel).si(rows.values[where.get(channel)][row]);
    }
}

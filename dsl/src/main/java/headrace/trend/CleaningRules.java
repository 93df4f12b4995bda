package headrace.trend;

import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/**
 * When a row of a trend log is left out.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI inside.
 *   <dt>Limits
 *   <dd>A reading is stuck where it keeps one value, other than 0, over at least so many rows while another channel
 *       moves. What a pump set can give sets the range of what is possible, with room for a sensor that is off; a
 *       reading a little below 0 is noise and stays.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_CLEANING}.
 *   <dt>Source
 *   <dd>The room of 30 % above and 2 % below, and the 20 rows, are our own.
 * </dl>
 *
 * @param stuckRows the least number of equal readings in a row that count as stuck, at least 3
 * @param stuckChannels the channels that are looked at for that
 * @param possible the values that are possible, by channel
 */
public record CleaningRules(int stuckRows, Set<Channel> stuckChannels, Map<Channel, Range> possible) {
    private static final int USUAL_STUCK = 20;
    private static final double ABOVE = 1.3;
    private static final double BELOW = -0.02;
    private static final double COLDEST = 273.15 - 60;
    private static final double WARMEST = 273.15 + 60;

    /**
     * What is possible.
     *
     * @param low the least value in SI
     * @param high the greatest
     */
    public record Range(double low, double high) {}

    /** Refuses fewer than 3 rows. */
    public CleaningRules {
        stuckChannels = Set.copyOf(stuckChannels);
        Map<Channel, Range> ordered = new EnumMap<>(Channel.class);
        ordered.putAll(possible);
        possible = Collections.unmodifiableMap(ordered);
        if (stuckRows < 3) {
            throw new Refusal(
                    TrendProblem.IMPOSSIBLE_CLEANING,
                    "Asked to take " + stuckRows + " equal readings in a row for a stuck sensor",
                    "It takes 3 or more, since two readings are often equal by chance",
                    "Common is " + USUAL_STUCK);
        }
    }

    /** Returns the usual rules for the log of a pump set. */
    public static CleaningRules of(PumpSet set) {
        double s = set.maximumSpeed().over(set.curve().speed()).value();
        double flow = set.curve().highestFlow().si() * s;
        double head = 0;
        double watts = 0;
        for (int i = 0; i <= 100; i++) {
            double q = set.curve().lowestFlow().si() * s
                    + (flow - set.curve().lowestFlow().si() * s) * i / 100;
            head = Math.max(head, set.curve().headMetres(q, s));
            watts = Math.max(watts, set.wireWatts(q, s));
        }
        Map<Channel, Range> possible = new EnumMap<>(Channel.class);
        possible.put(Channel.POWER, around(watts));
        possible.put(Channel.SPEED, around(set.maximumSpeed().si()));
        possible.put(Channel.FLOW, around(flow));
        possible.put(Channel.HEAD, around(head));
        possible.put(Channel.PLANT_HEAD, around(head));
        possible.put(Channel.VALVE, around(1));
        possible.put(Channel.OUTDOOR, new Range(COLDEST, WARMEST));
        return new CleaningRules(
                USUAL_STUCK, EnumSet.of(Channel.POWER, Channel.FLOW, Channel.HEAD, Channel.PLANT_HEAD), possible);
    }

    private static Range around(double most) {
        return new Range(BELOW * most, ABOVE * most);
    }

    /** Returns these rules with another range for a channel, in SI. */
    public CleaningRules with(Channel channel, double low, double high) {
        Map<Channel, Range> ranges = new EnumMap<>(Channel.class);
        ranges.putAll(possible);
        ranges.put(channel, new Range(low, high));
        return new CleaningRules(stuckRows, stuckChannels, ranges);
    }

    /** Returns these rules with another rule for stuck readings. */
    public CleaningRules withStuck(int rows, Set<Channel> channels) {
        return new CleaningRules(rows, channels, possible);
    }

    @Override
    public String toString() {
        return "cleaned: " + stuckRows + " equal readings in a row are a stuck sensor; what the pump set cannot give"
                + " is left out, and so is a row that lacks a reading";
    }
}

package headrace.trend;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Time;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The rows of a building's trend log, as read or cleaned, and the list of what was changed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI inside: s since 1970 UTC, W, rad/s, m³/s, m, K, shares. Times print in the clock of the log.
 *   <dt>Limits
 *   <dd>A log as read may hold missing numbers (NaN inside); only a cleaned one is calculated with, and holds none.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code CHANNEL_MISSING}, {@code LOG_NOT_CLEANED} or {@code TOO_SHORT_LOG}.
 *   <dt>Source
 *   <dd>Own.
 * </dl>
 */
public final class TrendLog implements Traced {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

    /** The steps looked at to find the usual one. */
    private static final int STEPS_LOOKED_AT = 5000;

    private final String name;
    private final Rows rows;
    private final long interval;
    private final List<Change> changes;
    private final Notes notes;
    private final Basis basis;
    private final boolean clean;

    /**
     * Rows in columns. The arrays are handed over and not copied.
     *
     * @param seconds the times, in s since 1970 UTC
     * @param lines the line of the file that each row starts on
     * @param values a column for each channel, in SI
     * @param count how many rows there are; the arrays may be longer
     * @param zone the clock in which times print
     */
    public record Rows(long[] seconds, int[] lines, Map<Channel, double[]> values, int count, ZoneId zone) {
        /** Keeps the map from changing. */
        public Rows {
            values = new EnumMap<>(values);
        }
    }

    private TrendLog(String name, Rows rows, List<Change> changes, Traces traces, boolean clean) {
        this.name = name;
        this.rows = rows;
        this.changes = List.copyOf(changes);
        this.notes = traces.notes;
        this.basis = traces.basis;
        this.clean = clean;
        this.interval = usualStep(rows);
    }

    private record Traces(Notes notes, Basis basis) {}

    /**
     * Returns a log as it was read.
     *
     * @param name what it is called, as its file
     * @param rows its rows in the order of the file
     * @param changes what reading has changed
     * @param basis what it rests on
     */
    public static TrendLog read(String name, Rows rows, List<Change> changes, Basis basis) {
        return new TrendLog(name, rows, changes, new Traces(Notes.NONE, basis), false);
    }

    /** Returns this log with what its reader had to say. */
    public TrendLog with(Notes more) {
        return new TrendLog(name, rows, changes, new Traces(notes.and(more), basis), clean);
    }

    TrendLog cleaned(Rows kept, List<Change> all, Notes more, String choice) {
        return new TrendLog(name, kept, all, new Traces(notes.and(more), basis.with(choice)), true);
    }

    /**
     * Returns this log cleaned by some rules.
     *
     * @throws Refusal with {@code TOO_SHORT_LOG} if nothing is left
     */
    public TrendLog cleaned(CleaningRules rules) {
        return Cleaning.of(this, rules);
    }

    /**
     * Returns the rows from one time to before another.
     *
     * @throws Refusal with {@code TOO_SHORT_LOG} if there are none
     */
    public TrendLog between(Instant from, Instant to) {
        requireClean();
        int first = indexFrom(from.getEpochSecond());
        int end = indexFrom(to.getEpochSecond());
        if (end <= first) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked for the rows of " + name + " from " + clock(from.getEpochSecond()) + " to before "
                            + clock(to.getEpochSecond()),
                    "The log has rows from " + clock(rows.seconds[0]) + " to " + clock(rows.seconds[count() - 1]),
                    "Name times inside it");
        }
        EnumMap<Channel, double[]> part = new EnumMap<>(Channel.class);
        rows.values.forEach((channel, values) -> part.put(channel, Arrays.copyOfRange(values, first, end)));
        Rows some = new Rows(
                Arrays.copyOfRange(rows.seconds, first, end),
                Arrays.copyOfRange(rows.lines, first, end),
                part,
                end - first,
                rows.zone);
        String choice = "the part from " + clock(from.getEpochSecond()) + " to before " + clock(to.getEpochSecond());
        return new TrendLog(name, some, changes, new Traces(notes, basis.with(choice)), true);
    }

    /** Returns the first row of a cleaned log that is not before a time. */
    int indexFrom(long second) {
        int at = Arrays.binarySearch(rows.seconds, 0, count(), second);
        return at >= 0 ? at : -at - 1;
    }

    /** Returns what it is called. */
    public String name() {
        return name;
    }

    /** Returns how many rows it has. */
    public int count() {
        return rows.count;
    }

    /** Returns whether it was cleaned. */
    public boolean isClean() {
        return clean;
    }

    /** Returns whether it has a channel. */
    public boolean has(Channel channel) {
        return rows.values.containsKey(channel);
    }

    /** Returns the channels that it has. */
    public List<Channel> channels() {
        return List.copyOf(rows.values.keySet());
    }

    /** Returns the usual time from row to row. */
    public Time interval() {
        return Time.seconds(interval);
    }

    /** Returns the time of the first row. */
    public Instant start() {
        return Instant.ofEpochSecond(rows.seconds[0]);
    }

    /** Returns the time of the last row. */
    public Instant end() {
        return Instant.ofEpochSecond(rows.seconds[count() - 1]);
    }

    /** Returns how many hours its rows stand for, a usual step each. */
    public Time covered() {
        return Time.seconds((double) interval * count());
    }

    /** Returns what was changed, in the order in which it was done. */
    public List<Change> changes() {
        return changes;
    }

    /** Returns how many rows a kind of change concerns. */
    public int rows(Change.Kind kind) {
        return changes.stream()
                .filter(change -> change.kind() == kind)
                .mapToInt(Change::rows)
                .sum();
    }

    /** Returns how often a kind of change was made. */
    public int times(Change.Kind kind) {
        return (int) changes.stream().filter(change -> change.kind() == kind).count();
    }

    /** Returns a time in the clock of this log. */
    public String clock(Instant time) {
        return clock(time.getEpochSecond());
    }

    String clock(long second) {
        return CLOCK.format(LocalDateTime.ofInstant(Instant.ofEpochSecond(second), rows.zone));
    }

    /** Returns the clock of this log. */
    public ZoneId zone() {
        return rows.zone;
    }

    /** Returns a copy of a channel's values in SI. */
    public double[] values(Channel channel) {
        return Arrays.copyOf(column(channel), count());
    }

    /** Returns a copy of the times in s since 1970 UTC. */
    public long[] seconds() {
        return Arrays.copyOf(rows.seconds, count());
    }

    Rows rows() {
        return rows;
    }

    long step() {
        return interval;
    }

    /** Returns the column itself, for loops over it. */
    double[] column(Channel channel) {
        double[] column = rows.values.get(channel);
        if (column == null) {
            throw new Refusal(
                    TrendProblem.CHANNEL_MISSING,
                    "Asked " + name + " for its " + channel.words(),
                    "It has "
                            + String.join(
                                    ", ",
                                    channels().stream().map(Channel::words).toList()),
                    "Log the " + channel.words() + " too, or use what does without it");
        }
        return column;
    }

    void requireClean() {
        if (!clean) {
            throw new Refusal(
                    TrendProblem.LOG_NOT_CLEANED,
                    "Asked for a result of " + name + " as it was read",
                    "Only a cleaned log is calculated with, so that what was left out is known",
                    "Clean it first, with cleanLog");
        }
    }

    /** Passes if this log has channels and rows enough. */
    void require(int least, String what, Channel... channels) {
        requireClean();
        for (Channel channel : channels) {
            column(channel);
        }
        if (count() < least) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked for " + what + " of " + name + " with " + count() + " rows",
                    "It takes " + least + " rows or more",
                    "Take a longer part of the log");
        }
    }

    /** Returns the step in s that occurs most often. */
    private static long usualStep(Rows rows) {
        int steps = Math.min(rows.count - 1, STEPS_LOOKED_AT);
        long[] all = new long[Math.max(0, steps)];
        int some = 0;
        for (int i = 0; i < steps; i++) {
            long step = rows.seconds[i + 1] - rows.seconds[i];
            if (step > 0) {
                all[some++] = step;
            }
        }
        Arrays.sort(all, 0, some);
        long best = 0;
        int most = 0;
        for (int i = 0, from = 0; i < some; i++) {
            from = all[i] == all[from] ? from : i;
            if (i - from + 1 > most) {
                most = i - from + 1;
                best = all[i];
            }
        }
        return best;
    }

    @Override
    public Notes notes() {
        return notes;
    }

    @Override
    public Basis basis() {
        return basis;
    }

    @Override
    public String toString() {
        return name + ": " + count() + " rows" + (clean ? "" : ", not cleaned")
                + (count() == 0 ? "" : ", from " + clock(rows.seconds[0]) + " to " + clock(rows.seconds[count() - 1]));
    }
}

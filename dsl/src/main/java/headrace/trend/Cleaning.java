package headrace.trend;

import headrace.problem.Notes;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.trend.Change.Kind;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.IntStream;

/** Cleans a log: puts it in order, leaves rows out, and lists each. Rows are marked first and moved once. */
final class Cleaning {
    private static final double MUCH = 0.1;

    private final TrendLog log;
    private final CleaningRules rules;
    private final TrendLog.Rows rows;
    private final Change.Listing listing;
    private final boolean[] out;

    private Cleaning(TrendLog log, TrendLog.Rows rows, CleaningRules rules, Change.Listing listing) {
        this.log = log;
        this.rules = rules;
        this.rows = rows;
        this.listing = listing;
        this.out = new boolean[rows.count()];
    }

    static TrendLog of(TrendLog log, CleaningRules rules) {
        Change.Listing listing = new Change.Listing(log.changes());
        return new Cleaning(log, ordered(log, listing), rules, listing).cleaned();
    }

    /** Goes over the rows again and again; one time over millions of them is short. */
    private TrendLog cleaned() {
        TrendLog.Rows kept;
        try (Steps steps = Work.steps(
                "cleaning the log",
                4 + rules.possible().size() + rules.stuckChannels().size())) {
            steps.next();
            repeatedTimes();
            steps.next();
            gaps();
            steps.next();
            missing();
            rules.possible().forEach((channel, range) -> {
                steps.next();
                impossible(channel, range);
            });
            rules.stuckChannels().stream().sorted().forEach(channel -> {
                steps.next();
                stuck(channel);
            });
            steps.next();
            kept = kept();
        }
        if (kept.count() == 0) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked to clean " + log.name() + ", of whose " + log.count() + " rows none is left",
                    "A row counts if all its readings are there and possible",
                    "Look at the list of changes; a unit that is another than its column says empties a log");
        }
        return log.cleaned(kept, listing.list(), notes(kept.count()), rules.toString());
    }

    private Notes notes(int kept) {
        double share = 1 - (double) kept / Math.max(1, log.count());
        return share <= MUCH
                ? Notes.NONE
                : Notes.NONE.with(
                        TrendProblem.MUCH_LEFT_OUT,
                        "Cleaning left out " + Ratio.of(share) + " of the rows of " + log.name()
                                + "; what is left need not be like the rest");
    }

    private Place place(int row) {
        return new Place(log.name(), rows.lines()[row], 0);
    }

    /** Returns the rows in the order of time, those of one time in the order of the file. */
    private static TrendLog.Rows ordered(TrendLog log, Change.Listing listing) {
        TrendLog.Rows rows = log.rows();
        long[] seconds = rows.seconds();
        boolean inOrder = true;
        for (int i = 1; i < rows.count(); i++) {
            if (seconds[i] < seconds[i - 1]) {
                listing.add(Kind.PUT_IN_ORDER, "", new Place(log.name(), rows.lines()[i], 0));
                inOrder = false;
            }
        }
        if (inOrder) {
            return rows;
        }
        int[] order = IntStream.range(0, rows.count())
                .boxed()
                .sorted(Comparator.comparingLong(i -> seconds[i]))
                .mapToInt(i -> i)
                .toArray();
        return moved(rows, order);
    }

    private static TrendLog.Rows moved(TrendLog.Rows rows, int[] order) {
        Map<Channel, double[]> values = new EnumMap<>(Channel.class);
        rows.values()
                .forEach((channel, column) -> values.put(
                        channel,
                        Arrays.stream(order).mapToDouble(i -> column[i]).toArray()));
        return new TrendLog.Rows(
                Arrays.stream(order).mapToLong(i -> rows.seconds()[i]).toArray(),
                Arrays.stream(order).map(i -> rows.lines()[i]).toArray(),
                values,
                order.length,
                rows.zone());
    }

    private void repeatedTimes() {
        long[] seconds = rows.seconds();
        int first = 0;
        for (int i = 1; i < rows.count(); i++) {
            if (seconds[i] != seconds[i - 1]) {
                first = i;
                continue;
            }
            out[i] = true;
            listing.add(Kind.REPEATED_TIME, same(first, i) ? "" : "with other readings", place(i));
        }
    }

    private boolean same(int one, int other) {
        for (double[] column : rows.values().values()) {
            if (Double.compare(column[one], column[other]) != 0) {
                return false;
            }
        }
        return true;
    }

    private void gaps() {
        long[] seconds = rows.seconds();
        double usual = log.step();
        for (int i = 1; i < rows.count(); i++) {
            long step = seconds[i] - seconds[i - 1];
            if (usual > 0 && step > 1.5 * usual) {
                int missing = (int) Math.max(1, Math.round(step / usual) - 1);
                listing.add(new Change(
                        Kind.GAP,
                        log.clock(seconds[i - 1]) + " to " + log.clock(seconds[i]),
                        missing,
                        place(i),
                        rows.lines()[i]));
            }
        }
    }

    /** Leaves rows out that lack a reading; where a text stood instead, reading has listed it already. */
    private void missing() {
        BitSet listed = new BitSet();
        log.changes().stream()
                .filter(change -> change.kind() == Kind.TEXT_FOR_NUMBER)
                .forEach(change -> listed.set(change.from().line(), change.lastLine() + 1));
        BitSet lacking = new BitSet();
        for (double[] column : rows.values().values()) {
            for (int i = 0; i < rows.count(); i++) {
                if (column[i] != column[i]) {
                    lacking.set(i);
                }
            }
        }
        lacking.stream().filter(i -> !out[i]).forEach(i -> {
            out[i] = true;
            if (!listed.get(rows.lines()[i])) {
                listing.add(Kind.EMPTY_CELL, firstMissing(i).words(), place(i));
            }
        });
    }

    private Channel firstMissing(int row) {
        return rows.values().entrySet().stream()
                .filter(entry -> Double.isNaN(entry.getValue()[row]))
                .findFirst()
                .orElseThrow()
                .getKey();
    }

    private void impossible(Channel channel, CleaningRules.Range range) {
        double[] column = rows.values().get(channel);
        for (int i = 0; column != null && i < rows.count(); i++) {
            if (!out[i] && !(column[i] >= range.low() && column[i] <= range.high())) {
                out[i] = true;
                listing.add(Kind.IMPOSSIBLE_VALUE, channel.words() + " " + channel.print(column[i]), place(i));
            }
        }
    }

    private void stuck(Channel channel) {
        double[] column = rows.values().get(channel);
        if (column == null) {
            return;
        }
        int[] left = left();
        for (int from = 0; from < left.length; ) {
            int end = from + 1;
            double value = column[left[from]];
            while (end < left.length && column[left[end]] == value) {
                end++;
            }
            if (end - from >= rules.stuckRows() && value != 0 && othersMove(channel, left, from, end)) {
                leaveOut(channel, left, from, end);
            }
            from = end;
        }
    }

    private boolean othersMove(Channel channel, int[] left, int from, int end) {
        for (Map.Entry<Channel, double[]> other : rows.values().entrySet()) {
            if (other.getKey() == channel) {
                continue;
            }
            double first = other.getValue()[left[from]];
            for (int i = from + 1; i < end; i++) {
                if (other.getValue()[left[i]] != first) {
                    return true;
                }
            }
        }
        return false;
    }

    private void leaveOut(Channel channel, int[] left, int from, int end) {
        for (int i = from; i < end; i++) {
            out[left[i]] = true;
        }
        String about = channel.words() + " at " + channel.print(rows.values().get(channel)[left[from]]);
        listing.add(new Change(Kind.STUCK_READING, about, end - from, place(left[from]), rows.lines()[left[end - 1]]));
    }

    private int[] left() {
        int[] left = new int[rows.count()];
        int count = 0;
        for (int i = 0; i < out.length; i++) {
            if (!out[i]) {
                left[count++] = i;
            }
        }
        return Arrays.copyOf(left, count);
    }

    /** Moves what is kept together, a stretch of rows at a time, since few rows are left out. */
    private TrendLog.Rows kept() {
        int count = 0;
        for (boolean each : out) {
            count += each ? 0 : 1;
        }
        long[] seconds = new long[count];
        int[] lines = new int[count];
        stretches(rows.seconds(), seconds);
        stretches(rows.lines(), lines);
        Map<Channel, double[]> values = new EnumMap<>(Channel.class);
        for (Map.Entry<Channel, double[]> entry : rows.values().entrySet()) {
            Work.poll();
            double[] kept = new double[count];
            stretches(entry.getValue(), kept);
            values.put(entry.getKey(), kept);
        }
        return new TrendLog.Rows(seconds, lines, values, count, rows.zone());
    }

    private void stretches(Object from, Object to) {
        int filled = 0;
        for (int i = 0; i < out.length; ) {
            int end = i;
            while (end < out.length && !out[end]) {
                end++;
            }
            System.arraycopy(from, i, to, filled, end - i);
            filled += end - i;
            i = end + 1;
        }
    }
}

package headrace.control.duty;

import headrace.problem.Refusal;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;

/**
 * A span of whole seconds: the first belongs to it, the last does not.
 *
 * @param from when it begins
 * @param to when it ends
 */
public record Span(long from, long to) {
    private static final int HOUR = 3600;
    private static final int DAY = 24 * HOUR;

    /** Refuses a span that ends before it begins. */
    public Span {
        if (from < 0 || to <= from) {
            throw new Refusal(
                    DutyProblem.IMPOSSIBLE_SPANS,
                    "Asked for a span from second " + from + " to second " + to,
                    "It begins at 0 or later and ends after it begins",
                    "Put its ends in order");
        }
    }

    /** Returns the span between two times since the beginning, to the second. */
    public static Span between(Time from, Time to) {
        return new Span(Math.round(from.seconds()), Math.round(to.seconds()));
    }

    /**
     * Returns a span of every day.
     *
     * @param fromHour the hour at which it begins, 0 to 23
     * @param toHour the hour at which it ends, after that and up to 24
     * @param days for how many days
     */
    public static List<Span> daily(int fromHour, int toHour, int days) {
        List<Span> spans = new ArrayList<>();
        for (long day = 0; day < days; day++) {
            spans.add(new Span(day * DAY + (long) fromHour * HOUR, day * DAY + (long) toHour * HOUR));
        }
        return joined(spans);
    }

    /** Joins spans of which one begins where the other ends. */
    static List<Span> joined(List<Span> spans) {
        List<Span> joined = new ArrayList<>();
        for (Span span : spans) {
            int last = joined.size() - 1;
            if (last >= 0 && joined.get(last).to() == span.from()) {
                joined.set(last, new Span(joined.get(last).from(), span.to()));
            } else {
                joined.add(span);
            }
        }
        return joined;
    }

    /** Returns how long it is, in s. */
    public long seconds() {
        return to - from;
    }

    /** Refuses spans out of order or beyond an end. */
    static void requireOrder(String what, List<Span> spans, long end) {
        long last = 0;
        for (Span span : spans) {
            if (span.from < last || span.to > end) {
                throw new Refusal(
                        DutyProblem.IMPOSSIBLE_SPANS,
                        "Asked for " + what + " from second " + span.from + " to second " + span.to + ", after one that"
                                + " ends at second " + last,
                        "They follow one another without overlap, from second 0 to second " + end,
                        "Put them in order, and join those that overlap");
            }
            last = span.to;
        }
    }
}

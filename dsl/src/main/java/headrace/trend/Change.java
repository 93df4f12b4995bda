package headrace.trend;

import headrace.problem.Place;
import java.util.ArrayList;
import java.util.List;

/**
 * One thing that was changed in a trend log, or found in it, with where it stands in the file.
 *
 * @param kind what was done
 * @param about the channel or the detail in words
 * @param rows how many rows it concerns
 * @param from where it stands, the first of its lines
 * @param lastLine the last of its lines
 */
public record Change(Kind kind, String about, int rows, Place from, int lastLine) {
    /** What can be done with a row. */
    public enum Kind {
        /** Rows that stood before earlier ones were put in the order of time. */
        PUT_IN_ORDER("put in the order of time"),
        /** A time that stood twice was kept once. */
        REPEATED_TIME("time stood twice, first row kept"),
        /** Times passed for which there are no rows; nothing was put in. */
        GAP("rows missing, left missing"),
        /** A row that does not fit the head of the file was left out. */
        MISFIT_ROW("row does not fit the head, left out"),
        /** A row whose time cannot be read was left out. */
        UNREADABLE_TIME("time cannot be read, row left out"),
        /** A text stood where a number belongs; the row was left out. */
        TEXT_FOR_NUMBER("text for a number, row left out"),
        /** A cell was empty; the row was left out. */
        EMPTY_CELL("empty cell, row left out"),
        /** A value that cannot be; the row was left out. */
        IMPOSSIBLE_VALUE("value that cannot be, row left out"),
        /** A reading that stood still while others moved; its rows were left out. */
        STUCK_READING("reading stands still, rows left out"),
        /** The clock was set back; the later of the two hours was told from the earlier. */
        CLOCK_SET_BACK("hour after the clock was set back, moved on"),
        /** A time that the clock never showed, because it was set ahead. */
        CLOCK_SET_AHEAD("time that the clock skipped, moved on");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Returns what was done, in words. */
        public String words() {
            return words;
        }
    }

    /** A list of changes in the making: what concerns neighbouring lines in the same way becomes one entry. */
    public static final class Listing {
        private final List<Change> all = new ArrayList<>();
        private Change last;

        /** Creates a list that goes on from an earlier one. */
        public Listing(List<Change> earlier) {
            all.addAll(earlier);
        }

        /** Adds a change of one row. */
        public void add(Kind kind, String about, Place where) {
            boolean joins = last != null
                    && last.kind == kind
                    && last.about.equals(about)
                    && (where.line() == last.lastLine + 1 || where.line() == last.lastLine);
            if (joins) {
                last = new Change(kind, about, last.rows + 1, last.from, where.line());
                all.set(all.size() - 1, last);
            } else {
                add(new Change(kind, about, 1, where, where.line()));
            }
        }

        /** Adds a change. */
        public void add(Change change) {
            last = change;
            all.add(change);
        }

        /** Returns what was listed so far. */
        public List<Change> list() {
            return List.copyOf(all);
        }
    }

    /** Returns where and what, such as {@code week.csv:12: empty cell, row left out (flow)}. */
    @Override
    public String toString() {
        return from + (lastLine > from.line() ? " to " + lastLine : "") + ": " + kind.words
                + (about.isEmpty() ? "" : " (" + about + ")");
    }
}

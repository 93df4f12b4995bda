package headrace.data.log;

import headrace.data.NumberStyle;
import headrace.problem.Place;
import headrace.trend.Change;
import headrace.trend.Change.Kind;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Reads the rows of a log off their bytes.
 *
 * <p>A general CSV reader makes a text of every cell, some fifty million bytes of them for a log of a year, and takes
 * several times as long as all that is done with the numbers afterwards. Here a number in plain digits is added up
 * where it stands, exactly as {@link Double#parseDouble} would have it: fifteen digits and a power of ten up to 10^15
 * are exact in a double, and their quotient is rounded once (Clinger, How to Read Floating Point Numbers Accurately,
 * 1990). Every other cell, quoted, with an exponent or a text, goes the slow way through {@link LogCells}.
 */
final class LogScan {
    private static final int MOST_DIGITS = 15;
    private static final double[] POWERS = powers();
    private static final int TIME = -1;
    private static final int UNUSED = -2;

    private final LogBuffer buffer;
    private final LogCells cells;
    private final byte separator;
    private final byte decimal;
    private final NumberStyle style;
    private final List<LogColumn> columns;
    private final int[] targets;
    private final ClockText times;
    private final LogClock clock;
    private final Change.Listing listing;
    private final LogRows rows;
    private final int[] texts;

    private int misfits;
    private Place firstMisfit;
    private int startOfRow;

    LogScan(LogBuffer buffer, char separator, Layout layout, LogRows rows) {
        this.buffer = buffer;
        this.cells = new LogCells(buffer, separator);
        this.separator = (byte) separator;
        this.style = layout.options().style();
        this.decimal = (byte) style.decimal();
        this.columns = layout.columns();
        this.targets = layout.targets();
        this.times = new ClockText(layout.options().dates());
        this.clock = new LogClock(buffer.file(), layout.options().zone(), layout.listing());
        this.listing = layout.listing();
        this.rows = rows;
        this.texts = new int[rows.values.length];
    }

    /**
     * What stands where.
     *
     * @param columns the columns of the file
     * @param options what the user says
     * @param listing where changes are listed
     */
    record Layout(List<LogColumn> columns, LogOptions options, Change.Listing listing) {
        /** Returns for each column where its values go. */
        int[] targets() {
            int[] targets = new int[columns.size()];
            int next = 0;
            for (int i = 0; i < targets.length; i++) {
                LogColumn column = columns.get(i);
                targets[i] = column.time() ? TIME : column.channel().isPresent() ? next++ : UNUSED;
            }
            return targets;
        }
    }

    private static double[] powers() {
        double[] powers = new double[MOST_DIGITS + 1];
        double power = 1;
        for (int i = 0; i < powers.length; i++) {
            powers[i] = power;
            power *= 10;
        }
        return powers;
    }

    /** Reads all rows that are left. */
    void all() throws IOException {
        while (buffer.row()) {
            if (LogBuffer.ends(buffer.bytes[buffer.at])) {
                buffer.endRow();
            } else {
                row();
            }
        }
    }

    /** Returns how many rows do not fit. */
    int misfits() {
        return misfits;
    }

    /** Returns where the first of them stands. */
    Place firstMisfit() {
        return firstMisfit;
    }

    /** Returns how many cells of a used column are texts, counted in the order of the used columns. */
    int texts(int used) {
        return texts[used];
    }

    private void row() {
        rows.room();
        startOfRow = buffer.at;
        int line = buffer.line;
        long seconds = ClockText.UNREADABLE;
        int last = targets.length - 1;
        for (int i = 0; i <= last; i++) {
            int target = targets[i];
            if (target >= 0) {
                number(target, i);
            } else if (target == TIME) {
                seconds = time();
            } else {
                cells.skip();
            }
            boolean ends = buffer.bytes[buffer.at] != separator;
            if (ends != (i == last)) {
                leaveOut(line, i + 1);
                return;
            }
            buffer.at += ends ? 0 : 1;
        }
        buffer.endRow();
        if (seconds != ClockText.UNREADABLE) {
            rows.seconds[rows.count] = seconds;
            rows.lines[rows.count++] = line;
        }
    }

    private void misfit(Kind kind, String about, Place place) {
        firstMisfit = firstMisfit == null ? place : firstMisfit;
        misfits++;
        listing.add(kind, about, place);
    }

    /** Goes to the end of a row that has too many cells or too few. */
    private void leaveOut(int line, int seen) {
        int found = seen;
        while (buffer.bytes[buffer.at] == separator) {
            buffer.at++;
            cells.skip();
            found++;
        }
        buffer.endRow();
        misfit(Kind.MISFIT_ROW, found + " cells", new Place(buffer.file(), line, 1));
    }

    private long time() {
        int start = buffer.at;
        long local = times.fast(buffer, separator);
        if (local == ClockText.UNREADABLE) {
            local = slowTime(start);
        }
        if (local == ClockText.UNREADABLE) {
            return local;
        }
        return times.zoned() ? local : clock.of(local, buffer.line, start - startOfRow + 1);
    }

    private long slowTime(int start) {
        String text = cells.text();
        Place place = buffer.place(startOfRow, start);
        long local = times.of(text, place);
        if (local == ClockText.UNREADABLE) {
            misfit(Kind.UNREADABLE_TIME, "'" + shortened(text) + "'", place);
        }
        return local;
    }

    private void number(int target, int column) {
        byte[] bytes = buffer.bytes;
        int i = buffer.at;
        boolean negative = bytes[i] == '-';
        i += negative ? 1 : 0;
        int from = i;
        long digits = 0;
        int digit;
        while ((digit = bytes[i] - '0') >= 0 && digit <= 9) {
            digits = digits * 10 + digit;
            i++;
        }
        int count = i - from;
        int places = 0;
        if (bytes[i] == decimal) {
            int point = i++;
            while ((digit = bytes[i] - '0') >= 0 && digit <= 9) {
                digits = digits * 10 + digit;
                i++;
            }
            places = i - point - 1;
            count += places;
        }
        boolean plain = count > 0 && count <= MOST_DIGITS && (bytes[i] == separator || LogBuffer.ends(bytes[i]));
        if (plain) {
            double value = digits / POWERS[places];
            rows.values[target][rows.count] = negative ? -value : value;
            buffer.at = i;
        } else {
            rows.values[target][rows.count] = slowNumber(target, column);
        }
    }

    /**
     * Returns the number of a cell that is not in plain digits, and NaN for an empty one or a text, which is listed.
     */
    private double slowNumber(int target, int column) {
        int start = buffer.at;
        String text = cells.text();
        OptionalDouble value = style.parse(text.replace('\u2212', '-'));
        if (value.isEmpty() && !text.isEmpty()) {
            texts[target]++;
            listing.add(
                    Kind.TEXT_FOR_NUMBER,
                    columns.get(column).channel().orElseThrow().words() + " '" + shortened(text) + "'",
                    buffer.place(startOfRow, start));
        }
        return value.orElse(Double.NaN);
    }

    private static String shortened(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= 20 ? plain : plain.substring(0, 20) + "…";
    }
}

package headrace.data.log;

import headrace.data.log.LogOptions.Dates;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads times: {@code 2026-03-02T07:15:00Z}, with an offset or none, with a blank for the T, with or without seconds;
 * {@code 02.03.2026 07:15}; and dates with slashes once it was said whether the day comes first.
 */
final class ClockText {
    /** No time: the text is none. */
    static final long UNREADABLE = Long.MIN_VALUE;

    private static final String TIME = "[T ]([0-9]{1,2}):([0-9]{2})(?::([0-9]{2})(?:[.,][0-9]+)?)?";
    private static final Pattern ISO =
            Pattern.compile("([0-9]{4})[-/]([0-9]{1,2})[-/]([0-9]{1,2})" + TIME + " ?(Z|[+-][0-9]{2}(?::?[0-9]{2})?)?");
    private static final Pattern DOTTED = Pattern.compile("([0-9]{1,2})\\.([0-9]{1,2})\\.([0-9]{4})" + TIME);
    private static final Pattern SLASHED = Pattern.compile("([0-9]{1,2})/([0-9]{1,2})/([0-9]{4})" + TIME);
    private static final int DAY = 86_400;
    private static final int SHORTEST = 17;
    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.nativeOrder());
    private static final VarHandle TWO = MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.nativeOrder());

    private final Dates dates;
    private boolean zoned;
    private long lastYearAndMonth;
    private short lastDayOfMonth;
    private long lastDay;

    ClockText(Dates dates) {
        this.dates = dates;
    }

    /** Returns whether the time read last says its zone or offset. */
    boolean zoned() {
        return zoned;
    }

    /**
     * Reads a time in the one layout that most files have, without making a text of it.
     *
     * @return the seconds, or {@link #UNREADABLE} if it has another layout; {@code buffer.at} then stands where it
     *     stood
     */
    long fast(LogBuffer buffer, byte separator) {
        byte[] b = buffer.bytes;
        int i = buffer.at;
        if (buffer.end - i < SHORTEST || !(sameDate(b, i) || date(b, i))) {
            return UNREADABLE;
        }
        int hour = pair(b, i + 11);
        int minute = pair(b, i + 14);
        int second = 0;
        int end = i + 16;
        if (b[end] == ':') {
            second = pair(b, end + 1);
            end += 3;
        }
        boolean utc = b[end] == 'Z';
        end += utc ? 1 : 0;
        boolean layout = (b[i + 10] == 'T' || b[i + 10] == ' ')
                && b[i + 13] == ':'
                && (b[end] == separator || LogBuffer.ends(b[end]));
        if (!layout || (hour | minute | second | 23 - hour | 59 - minute | 59 - second) < 0) {
            return UNREADABLE;
        }
        zoned = utc;
        buffer.at = end;
        return lastDay * DAY + hour * 3600L + minute * 60L + second;
    }

    /** Most rows have the date of the row before, letter by letter. */
    private boolean sameDate(byte[] b, int i) {
        return (long) EIGHT.get(b, i) == lastYearAndMonth && (short) TWO.get(b, i + 8) == lastDayOfMonth;
    }

    private boolean date(byte[] b, int i) {
        int century = pair(b, i);
        int year = pair(b, i + 2);
        int month = pair(b, i + 5);
        int day = pair(b, i + 8);
        boolean layout = b[i + 4] == '-' && b[i + 7] == '-' && (century | year | month | day) >= 0;
        if (!layout || !day(century * 100 + year, month, day)) {
            return false;
        }
        lastYearAndMonth = (long) EIGHT.get(b, i);
        lastDayOfMonth = (short) TWO.get(b, i + 8);
        return true;
    }

    /** Returns two digits as a number, or −1 if they are none. */
    private static int pair(byte[] b, int i) {
        int tens = b[i] - '0';
        int ones = b[i + 1] - '0';
        return (tens | ones | 9 - tens | 9 - ones) < 0 ? -1 : tens * 10 + ones;
    }

    /** Finds a day, and returns whether there is such a date. */
    private boolean day(int year, int month, int day) {
        try {
            lastDay = LocalDate.of(year, month, day).toEpochDay();
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }

    /**
     * Reads a time in any layout.
     *
     * @return the seconds since 1970 in its own zone, UTC if it says one; or {@link #UNREADABLE}
     * @throws Refusal with {@code DOUBTFUL_DATE} if day and month could be either
     */
    long of(String text, Place place) {
        zoned = false;
        Matcher iso = ISO.matcher(text);
        if (iso.matches()) {
            long local = seconds(iso, 1, 2, 3);
            zoned = iso.group(7) != null;
            return local == UNREADABLE || !zoned ? local : shifted(local, iso.group(7));
        }
        Matcher dotted = DOTTED.matcher(text);
        if (dotted.matches()) {
            return seconds(dotted, 3, 2, 1);
        }
        Matcher slashed = SLASHED.matcher(text);
        if (!slashed.matches()) {
            return UNREADABLE;
        }
        if (dates == Dates.NOT_SAID) {
            throw new Refusal(
                            LogProblem.DOUBTFUL_DATE,
                            "Asked to read the date '" + text + "', which can be read in two ways",
                            "Either the day comes first or the month, and a log does not say which",
                            "Say dates: 'day first' or dates: 'month first'")
                    .at(place);
        }
        return dates == Dates.DAY_FIRST ? seconds(slashed, 3, 2, 1) : seconds(slashed, 3, 1, 2);
    }

    private static long seconds(Matcher found, int year, int month, int day) {
        try {
            return LocalDateTime.of(
                            number(found, year),
                            number(found, month),
                            number(found, day),
                            number(found, 4),
                            number(found, 5),
                            number(found, 6))
                    .toEpochSecond(ZoneOffset.UTC);
        } catch (DateTimeException e) {
            return UNREADABLE;
        }
    }

    private static long shifted(long local, String offset) {
        try {
            return local - ZoneOffset.of(offset).getTotalSeconds();
        } catch (DateTimeException e) {
            return UNREADABLE;
        }
    }

    private static int number(Matcher found, int group) {
        return found.group(group) == null ? 0 : Integer.parseInt(found.group(group));
    }
}

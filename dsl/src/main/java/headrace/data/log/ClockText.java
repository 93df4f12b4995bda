package headrace.data.log;

import headrace.data.log.LogOptions.Dates;
import headrace.problem.Place;
import headrace.problem.Refusal;
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

    private final Dates dates;
    private boolean zoned;
    private int lastDate = -1;
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
        if (buffer.end - i < 17 || b[i + 4] != '-' || b[i + 7] != '-' || b[i + 13] != ':') {
            return UNREADABLE;
        }
        int date = (pair(b, i) * 100 + pair(b, i + 2)) * 10_000 + pair(b, i + 5) * 100 + pair(b, i + 8);
        int minutes = pair(b, i + 11) * 60 + pair(b, i + 14);
        int seconds = 0;
        int end = i + 16;
        if (b[end] == ':') {
            seconds = pair(b, end + 1);
            end += 3;
        }
        boolean utc = b[end] == 'Z';
        end += utc ? 1 : 0;
        boolean between = b[i + 10] == 'T' || b[i + 10] == ' ';
        if (date < 0 || minutes < 0 || seconds < 0 || !between || !(b[end] == separator || LogBuffer.ends(b[end]))) {
            return UNREADABLE;
        }
        if (pair(b, i + 11) > 23 || pair(b, i + 14) > 59 || seconds > 59 || !day(date)) {
            return UNREADABLE;
        }
        zoned = utc;
        buffer.at = end;
        return lastDay * DAY + minutes * 60L + seconds;
    }

    /** Returns two digits as a number, or a number far below 0 if they are none. */
    private static int pair(byte[] b, int i) {
        int tens = b[i] - '0';
        int ones = b[i + 1] - '0';
        return (tens | ones | 9 - tens | 9 - ones) < 0 ? -100_000_000 : tens * 10 + ones;
    }

    /** Finds the day of a date such as 20260302, and returns whether there is such a date. */
    private boolean day(int date) {
        if (date == lastDate) {
            return true;
        }
        try {
            lastDay = LocalDate.of(date / 10_000, date / 100 % 100, date % 100).toEpochDay();
            lastDate = date;
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

package headrace.data;

import headrace.data.Form.Field;
import headrace.problem.Refusal;
import headrace.units.Ratio;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A time as it stands in a file, {@code 2025-01-31 07:00}, local or with its offset from UTC as ISO 8601 has it.
 *
 * @param at the time, brought to the offset of the first if it has one
 * @param entry where it stands
 */
record ClockCell(LocalDateTime at, Entry entry) {
    /** The column of times. */
    static final Field<Ratio> CLOCK = Field.text("time", true);

    private static final Pattern WRITTEN = Pattern.compile(
            "([0-9]{4}-[0-9]{2}-[0-9]{2})[T ]([0-9]{2}:[0-9]{2}(?::[0-9]{2})?)(Z|[+-][0-9]{2}:[0-9]{2})?");

    /** Reads times one after the other. */
    static final class Reader {
        private ZoneOffset first;
        private boolean begun;

        /** Returns the time in a cell. */
        ClockCell read(Entry entry) {
            Matcher matcher = WRITTEN.matcher(entry.text());
            if (!matcher.matches()) {
                throw wrong(entry);
            }
            try {
                String text = matcher.group(1) + "T" + matcher.group(2);
                LocalDateTime local = LocalDateTime.parse(text);
                ZoneOffset offset = matcher.group(3) == null ? null : ZoneOffset.of(matcher.group(3));
                if (begun && (offset == null) != (first == null)) {
                    throw entry.refused(
                            DataProblem.VALUE_NOT_POSSIBLE,
                            "Asked to read the time '" + entry.text() + "' among times that "
                                    + (first == null ? "do not say their offset" : "say their offset"),
                            "Either every time says its offset from UTC, or none",
                            "Write them alike");
                }
                first = begun ? first : offset;
                begun = true;
                LocalDateTime at = offset == null
                        ? local
                        : OffsetDateTime.of(local, offset)
                                .withOffsetSameInstant(first)
                                .toLocalDateTime();
                return new ClockCell(at, entry);
            } catch (DateTimeException e) {
                throw wrong(entry);
            }
        }

        private static Refusal wrong(Entry entry) {
            return entry.refused(
                    DataProblem.VALUE_NOT_POSSIBLE,
                    "Asked to read '" + entry.text() + "' as a time",
                    "A time is written like 2025-01-31 07:00",
                    "Write year, month and day with hyphens, and the hour from 00 to 23");
        }
    }
}

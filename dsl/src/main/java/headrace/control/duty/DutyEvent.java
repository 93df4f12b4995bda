package headrace.control.duty;

import java.util.Locale;

/**
 * Something that happens in a duty record.
 *
 * @param second when, in seconds since the beginning
 * @param kind what
 * @param pump to which pump, from 0; −1 where it is none in particular
 */
public record DutyEvent(long second, Kind kind, int pump) {
    /** What can happen. */
    public enum Kind {
        /** The pump starts. */
        START("starts"),
        /** The pump stops. */
        STOP("stops"),
        /** The pump fails. */
        FAULT("fails"),
        /** The pump is fit again. */
        REPAIRED("is fit again"),
        /** An alternation is left out because no other pump is fit, or the next one is only starting. */
        LEFT_OUT("keeps the duty, its turn to give it up is left out"),
        /** Flow is wanted and no pump is fit. */
        NO_PUMP("no pump is fit"),
        /** The circuit wants flow. */
        WANTED("flow is wanted"),
        /** The circuit wants no flow any more. */
        NOT_WANTED("flow is no longer wanted");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Returns this in words, as it follows the pump. */
        public String words() {
            return words;
        }
    }

    @Override
    public String toString() {
        long day = second / 86_400;
        String clock = String.format(
                Locale.ROOT, "day %d %02d:%02d:%02d", day + 1, second / 3600 % 24, second / 60 % 60, second % 60);
        return clock + ": " + (pump < 0 ? "" : "pump " + (pump + 1) + " ") + kind.words();
    }
}

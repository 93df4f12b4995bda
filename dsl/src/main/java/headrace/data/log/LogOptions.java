package headrace.data.log;

import headrace.data.NumberStyle;
import headrace.trend.Channel;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;

/**
 * What the user says about a log beside its name.
 *
 * @param style how numbers are written
 * @param units units, by channel, that stand above what the file says
 * @param columns the heads of columns, by channel, where they do not say what they are
 * @param zone the clock of the times, where these do not say it
 * @param dates how dates with slashes are to be read
 */
public record LogOptions(
        NumberStyle style,
        Map<Channel, String> units,
        Map<Channel, String> columns,
        Optional<ZoneId> zone,
        Dates dates) {
    /** How dates with slashes are to be read. */
    public enum Dates {
        /** Nothing was said. */
        NOT_SAID,
        /** The day stands before the month. */
        DAY_FIRST,
        /** The month stands before the day. */
        MONTH_FIRST
    }

    /** Nothing is said. */
    public static final LogOptions NONE =
            new LogOptions(NumberStyle.DECIMAL_POINT, Map.of(), Map.of(), Optional.empty(), Dates.NOT_SAID);

    /** Keeps the maps from changing. */
    public LogOptions {
        units = Map.copyOf(units);
        columns = Map.copyOf(columns);
    }

    /** Returns these with decimal commas or points. */
    public LogOptions with(NumberStyle other) {
        return new LogOptions(other, units, columns, zone, dates);
    }

    /** Returns these with units. */
    public LogOptions withUnits(Map<Channel, String> stated) {
        return new LogOptions(style, stated, columns, zone, dates);
    }

    /** Returns these with the heads of columns. */
    public LogOptions withColumns(Map<Channel, String> stated) {
        return new LogOptions(style, units, stated, zone, dates);
    }

    /** Returns these with a clock. */
    public LogOptions with(ZoneId clock) {
        return new LogOptions(style, units, columns, Optional.of(clock), dates);
    }

    /** Returns these with a way to read dates. */
    public LogOptions with(Dates way) {
        return new LogOptions(style, units, columns, zone, way);
    }
}

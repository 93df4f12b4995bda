package headrace.script;

import headrace.data.Column;
import headrace.data.NumberStyle;
import headrace.data.Table;
import headrace.data.log.LogFile;
import headrace.data.log.LogOptions;
import headrace.data.log.LogOptions.Dates;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.trend.Change;
import headrace.trend.Channel;
import headrace.trend.CleaningRules;
import headrace.trend.LoggedLoad;
import headrace.trend.OutdoorYear;
import headrace.trend.TrendLog;
import headrace.trend.YearLoad;
import headrace.units.Flow;
import headrace.units.Temperature;
import headrace.units.Time;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Words that read, clean and condense a building's trend log. */
public final class TrendWords implements Words {
    private static final String READ =
            "Reads a trend log of a pump set: a CSV file with columns of time, power and speed, and if it has them flow,"
                    + " head, plant head, valve and outdoor temperature. Each unit is found in the head of its column or"
                    + " from its values, held against the pump set, and said.";
    private static final String READ_EXAMPLE = "log = readTrendLog('demo-data/logs/otterbank-week.csv', set)";
    private static final String CLEAN =
            "Cleans a trend log and lists every change: rows put in order, repeated times, gaps, empty cells, values that"
                    + " the pump set cannot give, readings that stand still while others move.";
    private static final String YEAR =
            "Extends the load of a cleaned log to a year by the outdoor temperature, with its 95 % band.";
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

    @Override
    public String subject() {
        return "Trend logs";
    }

    /** Reads a trend log. */
    @Word(help = READ, example = READ_EXAMPLE)
    public static TrendLog readTrendLog(Object file, Object set) {
        return readTrendLog(Map.of(), file, set);
    }

    /** Reads a trend log. */
    @Word(
            help = READ,
            example = READ_EXAMPLE,
            choices = {
                "units: units that stand above what the file says, as [speed: 'Hz', flow: 'L/s']",
                "columns: the heads of columns that do not say what they are, as [power: 'P-A 17']",
                "zone: the zone of times that name none, such as 'CET'; needed where the clock is set back",
                "dates: 'day first' or 'month first', needed for dates with slashes",
                "decimalComma: true for a file with decimal commas; false unless chosen"
            })
    public static TrendLog readTrendLog(Map<String, ?> given, Object file, Object set) {
        Choices choices = Choices.of("readTrendLog", given, "units", "columns", "zone", "dates", "decimalComma");
        LogOptions options = LogOptions.NONE
                .withUnits(byChannel(choices, "units"))
                .withColumns(byChannel(choices, "columns"))
                .with(dates(choices))
                .with(choices.yes("decimalComma", false) ? NumberStyle.DECIMAL_COMMA : NumberStyle.DECIMAL_POINT);
        LogOptions all = choices.has("zone") ? options.with(zone(choices.text("zone"))) : options;
        PumpSet pumps = ControlWords.set(set, "readTrendLog");
        return FileWords.read("readTrendLog", file, path -> LogFile.read(path, pumps, all));
    }

    private static Map<Channel, String> byChannel(Choices choices, String name) {
        Map<Channel, String> all = new EnumMap<>(Channel.class);
        Map<?, ?> said = choices.object(name, Map.class, Map.of());
        said.forEach((key, value) -> all.put(channel(String.valueOf(key)), String.valueOf(value)));
        return all;
    }

    /** Returns the channel that a script calls so: the first word of its name, or {@code plantHead}. */
    static Channel channel(String name) {
        List<String> names = new ArrayList<>();
        for (Channel channel : Channel.values()) {
            String word =
                    channel == Channel.PLANT_HEAD ? "plantHead" : channel.name().toLowerCase(Locale.ROOT);
            if (word.equals(name)) {
                return channel;
            }
            names.add(word);
        }
        throw new Refusal(
                ScriptProblem.UNKNOWN_CHOICE,
                "A reading of a trend log was called '" + name + "'",
                "Readings are " + String.join(", ", names),
                Nearest.sentence(Nearest.to(name, names), "Use one of these names"));
    }

    private static Dates dates(Choices choices) {
        String said = choices.text("dates", "");
        return switch (said) {
            case "" -> Dates.NOT_SAID;
            case "day first" -> Dates.DAY_FIRST;
            case "month first" -> Dates.MONTH_FIRST;
            default -> throw wrong("'" + said + "'", "dates", "'day first' or 'month first'");
        };
    }

    private static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException e) {
            throw wrong("'" + name + "'", "zone", "a time zone such as 'CET', 'UTC' or '+01:00'");
        }
    }

    static Refusal wrong(String given, String choice, String possible) {
        return new Refusal(
                ScriptProblem.WRONG_VALUE,
                given + " was given for " + choice + ":",
                "It must be " + possible,
                "Write one of these");
    }

    /** Cleans a trend log. */
    @Word(help = CLEAN, example = "clean = cleanLog(log, set)")
    public static TrendLog cleanLog(Object log, Object set) {
        return cleanLog(Map.of(), log, set);
    }

    /** Cleans a trend log. */
    @Word(
            help = CLEAN,
            example = "clean = cleanLog(log, set, stuckRows: 30)",
            choices = "stuckRows: how many equal readings in a row are a stuck sensor, 3 or more; 20 unless chosen")
    public static TrendLog cleanLog(Map<String, ?> given, Object log, Object set) {
        Choices choices = Choices.of("cleanLog", given, "stuckRows");
        CleaningRules rules = CleaningRules.of(ControlWords.set(set, "cleanLog"));
        int rows = choices.whole("stuckRows", rules.stuckRows());
        return log(log, "cleanLog").cleaned(rules.withStuck(rows, rules.stuckChannels()));
    }

    static TrendLog log(Object given, String word) {
        return Wanted.object(TrendLog.class, given, "the log of " + word);
    }

    /** Lists changes. */
    @Word(help = "Every change of a trend log, with its lines in the file, as a table.", example = "changes(clean)")
    public static Table changes(Object log) {
        TrendLog trend = log(log, "changes");
        Table table = Table.of(
                "Changes of " + trend.name(),
                Column.number("from line"),
                Column.number("to line"),
                Column.number("rows"),
                Column.text("what was done"),
                Column.text("about"));
        List<Object[]> rows = new ArrayList<>();
        for (Change change : trend.changes()) {
            rows.add(new Object[] {
                change.from().line(),
                change.lastLine(),
                change.rows(),
                change.kind().words(),
                change.about()
            });
        }
        return table.rows(rows);
    }

    /** Takes a part of a log. */
    @Word(
            help = "The rows of a cleaned log from one time to before another, in the clock of the log.",
            example = "part(clean, from: '2026-06-01 00:00', to: '2026-06-04 12:00')",
            choices = {
                "from: the time of the first row, as '2026-06-01 00:00'; the start of the log unless chosen",
                "to: the time before which the last row lies; the end of the log unless chosen"
            })
    public static TrendLog part(Map<String, ?> given, Object log) {
        Choices choices = Choices.of("part", given, "from", "to");
        TrendLog trend = log(log, "part");
        return trend.between(
                choices.has("from") ? time(trend, choices.text("from")) : trend.start(),
                choices.has("to")
                        ? time(trend, choices.text("to"))
                        : trend.end().plusSeconds(1));
    }

    /** Returns a time that a script says in the clock of a log. */
    static Instant time(TrendLog log, String text) {
        try {
            return LocalDateTime.parse(text.strip(), CLOCK).atZone(log.zone()).toInstant();
        } catch (DateTimeException e) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "The text '" + text + "' was given for a time of " + log.name(),
                    "Times are written like " + log.clock(log.start()) + ", in the clock of the log",
                    "Write it so");
        }
    }

    /** Condenses a log to its load. */
    @Word(
            help =
                    "The load of a cleaned log as shares of a design flow: twenty bins of equally many rows, the time in each"
                            + " 5 %, the energy.",
            example = "loggedLoad(clean, 52.m3ph)")
    public static LoggedLoad loggedLoad(Object log, Object design) {
        return LoggedLoad.of(log(log, "loggedLoad"), Wanted.flow(design, "the design flow of loggedLoad"));
    }

    /** States outdoor temperatures. */
    @Word(
            help = "The outdoor temperatures of a year, each with its hours.",
            example = "outdoorYear([[5.degC, 3000.h], [15.degC, 4000.h], [25.degC, 1760.h]])")
    public static OutdoorYear outdoorYear(List<?> bins) {
        List<OutdoorYear.Bin> all = new ArrayList<>();
        for (Object bin : bins) {
            Object[] two = Rows.of(bin, 2, "a bin of outdoorYear", "a temperature and its hours");
            all.add(new OutdoorYear.Bin(
                    Wanted.quantity(Temperature.KIND, two[0], "the temperature of a bin"),
                    Wanted.quantity(Time.KIND, two[1], "the hours of a bin")));
        }
        return new OutdoorYear(all);
    }

    /** Extends a load to a year. */
    @Word(
            help = YEAR,
            example = "yearLoad(clean, design: 52.m3ph, outdoor: outdoorYear([[10.degC, 5000.h], [20.degC, 3760.h]]))",
            choices = {
                "design: the design flow",
                "outdoor: an outdoorYear",
                "seed: of the drawing of days for the band, a whole number; 1 unless chosen"
            })
    public static YearLoad yearLoad(Map<String, ?> given, Object log) {
        Choices choices = Choices.of("yearLoad", given, "design", "outdoor", "seed");
        return YearLoad.of(
                log(log, "yearLoad"),
                choices.quantity("design", Flow.KIND),
                choices.object("outdoor", OutdoorYear.class),
                choices.whole("seed", 1));
    }
}

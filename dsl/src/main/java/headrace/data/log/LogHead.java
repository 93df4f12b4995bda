package headrace.data.log;

import headrace.data.DataProblem;
import headrace.problem.Nearest;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.trend.Channel;
import headrace.units.Frequency;
import headrace.units.Pressure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The head of a log: finds out what each column holds, from its name, from its unit, or from what the user says. */
final class LogHead {
    private static final Pattern BRACKETED = Pattern.compile("(.*?)\\s*[\\[(]\\s*([^\\[\\]()]*?)\\s*[\\])]\\s*");
    private static final Set<String> TIMES =
            Set.of("time", "timestamp", "date", "datetime", "date time", "date/time", "date and time");

    /** Names in the order in which they are looked for, since a plant head is a head too. */
    private static final List<Map.Entry<Pattern, Channel>> NAMES = List.of(
            name("outdoor|outside|ambient|oat", Channel.OUTDOOR),
            name("valve|opening|position", Channel.VALVE),
            name("plant|strainer|filter|exchanger", Channel.PLANT_HEAD),
            name("power|kw", Channel.POWER),
            name("speed|frequency|rpm", Channel.SPEED),
            name("flow", Channel.FLOW),
            name("head|pressure|dp", Channel.HEAD));

    private final LogOptions options;
    private final List<LogColumn> columns = new ArrayList<>();
    private final Place place;

    private LogHead(LogOptions options, Place place) {
        this.options = options;
        this.place = place;
    }

    private static Map.Entry<Pattern, Channel> name(String words, Channel channel) {
        return Map.entry(Pattern.compile(".*(?<![a-z])(" + words + ")(?![a-z]).*"), channel);
    }

    /** Reads the head; refuses one without time, power or speed, or with two columns for one thing. */
    static List<LogColumn> of(List<String> cells, LogOptions options, Place place) {
        LogHead head = new LogHead(options, place);
        int column = 1;
        for (String cell : cells) {
            head.columns.add(head.column(cell, new Place(place.file(), place.line(), column)));
            column += cell.length() + 1;
        }
        head.requireNamed();
        head.requireOnce();
        head.requireNeeded();
        return head.columns;
    }

    private LogColumn column(String cell, Place where) {
        Matcher bracketed = BRACKETED.matcher(cell);
        boolean matches = bracketed.matches() && !bracketed.group(2).isEmpty();
        String unit = matches ? bracketed.group(2) : unitAtEnd(cell);
        String before = matches ? bracketed.group(1) : cell.substring(0, cell.length() - unit.length());
        String name = before.strip().toLowerCase(Locale.ROOT).replace('_', ' ');
        boolean time = TIMES.contains(name);
        return new LogColumn(cell, name, unit, time, time ? Optional.empty() : channel(cell, name, unit), where);
    }

    private Optional<Channel> channel(String cell, String name, String unit) {
        return options.columns().entrySet().stream()
                .filter(entry -> entry.getValue().strip().equals(cell))
                .map(Map.Entry::getKey)
                .findFirst()
                .or(() -> byName(name, unit));
    }

    private Optional<Channel> byName(String name, String unit) {
        Optional<Channel> named = NAMES.stream()
                .filter(entry -> entry.getKey().matcher(name).matches())
                .map(Map.Entry::getValue)
                .filter(channel -> !options.columns().containsKey(channel))
                .findFirst();
        return named.isPresent() || !name.isBlank()
                ? named
                : byUnit(unit).filter(channel -> !options.columns().containsKey(channel));
    }

    /** Returns what a bare unit is for, where only one thing is measured in it. */
    private static Optional<Channel> byUnit(String unit) {
        if (Frequency.KIND.find(unit).isPresent()) {
            return Optional.of(Channel.SPEED);
        }
        if (Pressure.KIND.find(unit).isPresent()) {
            return Optional.of(Channel.HEAD);
        }
        return EnumSet.of(Channel.POWER, Channel.SPEED, Channel.FLOW, Channel.HEAD, Channel.OUTDOOR).stream()
                .filter(channel -> channel.kind().find(unit).isPresent())
                .findFirst();
    }

    /** Returns the longest end of a head that is a unit of something a log can hold. */
    private static String unitAtEnd(String cell) {
        String text = cell.strip();
        for (int from = 0; from < text.length(); from++) {
            boolean begins = from == 0 || " _,".indexOf(text.charAt(from - 1)) >= 0;
            String end = text.substring(from);
            boolean unit = end.equals("%")
                    || byUnit(end).isPresent()
                    || Arrays.stream(Channel.values())
                            .anyMatch(channel -> channel.kind().find(end).isPresent());
            if (begins && unit) {
                return end;
            }
        }
        return "";
    }

    private void requireNamed() {
        options.columns().forEach((channel, head) -> {
            if (columns.stream().noneMatch(column -> column.channel().equals(Optional.of(channel)))) {
                List<String> heads = columns.stream().map(LogColumn::head).toList();
                throw new Refusal(
                                DataProblem.MISSING_COLUMN,
                                "Asked to read the " + channel.words() + " from the column '" + head + "'",
                                "The columns are " + String.join(", ", heads),
                                Nearest.sentence(Nearest.to(head, heads), "Write one of these"))
                        .at(place);
            }
        });
    }

    private void requireOnce() {
        for (int i = 0; i < columns.size(); i++) {
            LogColumn column = columns.get(i);
            Optional<LogColumn> twin = columns.subList(0, i).stream()
                    .filter(earlier -> column.used()
                            && earlier.time() == column.time()
                            && earlier.channel().equals(column.channel()))
                    .findFirst();
            if (twin.isPresent()) {
                String what = column.channel().map(Channel::words).orElse("time");
                throw new Refusal(
                                DataProblem.WRONG_COLUMN,
                                "Asked to read the " + what + " from two columns, '"
                                        + twin.get().head() + "' and '" + column.head() + "'",
                                "Each reading has one column",
                                "Say which, as in columns: [" + key(column) + ": '" + column.head() + "']")
                        .at(column.place());
            }
        }
    }

    private static String key(LogColumn column) {
        return column.channel().map(LogHead::key).orElse("time");
    }

    /** Returns the name under which a script speaks of a channel. */
    static String key(Channel channel) {
        return channel == Channel.PLANT_HEAD ? "plantHead" : channel.name().toLowerCase(Locale.ROOT);
    }

    private void requireNeeded() {
        String heads = String.join(", ", columns.stream().map(LogColumn::head).toList());
        if (columns.stream().noneMatch(LogColumn::time)) {
            throw new Refusal(
                            LogProblem.TIME_COLUMN_MISSING,
                            "Asked to read a log without a column of times; its columns are " + heads,
                            "The times stand in a column called time, timestamp or date",
                            "Call it so, or see whether the columns are parted by another sign")
                    .at(place);
        }
        for (Channel channel : List.of(Channel.POWER, Channel.SPEED)) {
            if (columns.stream().noneMatch(column -> column.channel().equals(Optional.of(channel)))) {
                throw new Refusal(
                                DataProblem.MISSING_COLUMN,
                                "Asked to read a log without a column of " + channel.words() + "; its columns are "
                                        + heads,
                                "A log has at least time, power and speed",
                                "If one of them is the " + channel.words() + ", say so, as in columns: [" + key(channel)
                                        + ": 'P-A 17']")
                        .at(place);
            }
        }
    }
}

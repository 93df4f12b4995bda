package headrace.data.log;

import headrace.data.DataProblem;
import headrace.numeric.Quantiles;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.trend.Channel;
import headrace.trend.CleaningRules;
import headrace.units.Numbers;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Finds the unit of each column and holds it against what the pump set can give.
 *
 * <p>A unit fits if the high values of the column, its 98 % quantile, lie between a share of what is possible and all
 * of it. A unit that the head says is taken if it fits; if another one fits instead, the file is refused, unless the
 * user stands by the unit. A column without one takes the only unit that fits, and says so. Speed, power and flow are
 * also held against each other by the pump map.
 *
 * <p>The bounds are our own.
 */
final class LogUnits {
    private static final double HIGH = 0.98;

    /** The least share of the possible that the high values of a working plant reach. */
    private static final Map<Channel, Double> LEAST =
            Map.of(Channel.POWER, 0.02, Channel.SPEED, 0.2, Channel.FLOW, 0.1, Channel.HEAD, 0.05);

    private static final double LEAST_OTHER = 0.002;
    private static final int MOST_SAMPLES = 20_000;

    /** Readings this near the map, as |ln(measured/map)|, speak for a unit, and those this far against it. */
    private static final double NEAR = 0.1;

    private static final double FAR = 0.25;

    private final LogOptions options;
    private final PumpSet set;
    private final CleaningRules possible;
    private final Map<Channel, Scale> found = new EnumMap<>(Channel.class);
    private final List<String> taken = new ArrayList<>();
    private Notes notes = Notes.NONE;
    private LogAgreement agreement;

    LogUnits(LogOptions options, PumpSet set) {
        this.options = options;
        this.set = set;
        this.possible = CleaningRules.of(set);
    }

    Map<Channel, Scale> found() {
        return found;
    }

    Notes notes() {
        return notes;
    }

    /** Returns what was taken, a sentence for each column. */
    List<String> taken() {
        return taken;
    }

    /** Finds the unit of each column; those that decide about others come first. */
    void confirm(List<LogColumn> columns, LogRows rows) {
        Map<Channel, Integer> where = new EnumMap<>(Channel.class);
        for (int i = 0; i < columns.size(); i++) {
            where.put(columns.get(i).channel().orElseThrow(), i);
        }
        agreement = new LogAgreement(set, rows, where);
        where.forEach((channel, i) -> confirm(columns.get(i), sample(rows.values[i], rows.count)));
    }

    /** Returns the numbers of some rows, from the first to the last: they tell a unit as well as all of them. */
    private static double[] sample(double[] values, int count) {
        int step = Math.max(1, count / MOST_SAMPLES);
        return IntStream.range(0, count / step)
                .mapToDouble(i -> values[i * step])
                .filter(value -> !Double.isNaN(value))
                .toArray();
    }

    /** Finds the unit of a column from its head and its values as they stand in the file. */
    private void confirm(LogColumn column, double[] read) {
        Channel channel = column.channel().orElseThrow();
        double[] ends =
                read.length == 0 ? new double[] {0, 0} : Quantiles.of(read).at(new double[] {1 - HIGH, HIGH});
        String stated = options.units().get(channel);
        if (stated != null) {
            byUser(column, scale(column, stated), ends);
        } else if (column.unit().isEmpty()) {
            byValues(column, ends);
        } else {
            byHead(column, scale(column, column.unit()), ends);
        }
    }

    private Scale scale(LogColumn column, String unit) {
        Channel channel = column.channel().orElseThrow();
        return Scale.of(channel, unit, set)
                .orElseThrow(() -> new Refusal(
                                DataProblem.WRONG_UNIT,
                                "Asked to read the " + channel.words() + " in '" + unit + "'",
                                "Common units of it are " + String.join(", ", Scale.common(channel)),
                                "Use one of these, and convert the numbers if they are in another")
                        .at(column.place()));
    }

    private void byUser(LogColumn column, Scale scale, double[] ends) {
        take(column, scale, "as the user says");
        if (!fits(column, scale, ends)) {
            notes = notes.with(
                    LogProblem.UNIT_STATED_AGAINST_VALUES,
                    "The column '" + column.head() + "' was read in " + scale.symbol()
                            + " as stated, though its values, " + between(ends)
                            + ", are not what the pump set gives in it");
        }
    }

    private void byHead(LogColumn column, Scale scale, double[] ends) {
        List<Scale> others = fitting(column, ends);
        if (!fits(column, scale, ends) && (tooHigh(column, scale, ends) || !others.isEmpty())) {
            throw notConfirmed(column, scale, ends, others);
        }
        Channel channel = column.channel().orElseThrow();
        List<Scale> nearer =
                others.stream().filter(other -> off(channel, other) < NEAR).toList();
        if (off(channel, scale) > FAR && !nearer.isEmpty()) {
            throw notConfirmed(column, scale, ends, nearer);
        }
        take(column, scale, "as its head says");
    }

    private void byValues(LogColumn column, double[] ends) {
        Channel channel = column.channel().orElseThrow();
        List<Scale> fitting = byMap(channel, fitting(column, ends));
        if (fitting.size() != 1) {
            String which = fitting.isEmpty() ? "none of " + String.join(", ", Scale.common(channel)) : symbols(fitting);
            throw new Refusal(
                            LogProblem.DOUBTFUL_UNIT,
                            "Asked to read the column '" + column.head() + "', which does not say its unit",
                            "Its values, " + between(ends) + ", fit " + which + " for this pump set",
                            say(
                                    channel,
                                    fitting.isEmpty()
                                            ? Scale.common(channel).get(0)
                                            : fitting.get(0).symbol()))
                    .at(column.place());
        }
        take(column, fitting.get(0), "from its values, " + between(ends));
        notes = notes.with(
                LogProblem.UNIT_FROM_VALUES,
                "The column '" + column.head() + "' does not say its unit; "
                        + fitting.get(0).symbol() + " is the only one in which its values, " + between(ends)
                        + ", fit the pump set");
    }

    /** Returns the one unit that the pump map speaks for, if all others are far from it; all of them otherwise. */
    private List<Scale> byMap(Channel channel, List<Scale> fitting) {
        List<Scale> near =
                fitting.stream().filter(scale -> off(channel, scale) < NEAR).toList();
        List<Scale> far =
                fitting.stream().filter(scale -> off(channel, scale) > FAR).toList();
        return near.size() == 1 && near.size() + far.size() == fitting.size() ? near : fitting;
    }

    /** Returns how far from the pump map a unit leaves the readings: of flow the power, of head the head itself. */
    private double off(Channel channel, Scale scale) {
        Map<Channel, Scale> with = new EnumMap<>(Channel.class);
        with.putAll(found);
        with.put(channel, scale);
        return switch (channel) {
            case FLOW -> agreement.ofPower(with);
            case HEAD -> agreement.ofHead(with);
            default -> LogAgreement.UNKNOWN;
        };
    }

    private Refusal notConfirmed(LogColumn column, Scale scale, double[] ends, List<Scale> others) {
        Channel channel = column.channel().orElseThrow();
        CleaningRules.Range range = possible.possible().get(channel);
        String fit = others.isEmpty() ? "" : "; they would fit " + symbols(others);
        return new Refusal(
                        LogProblem.UNIT_NOT_CONFIRMED,
                        "Asked to read the column '" + column.head() + "' in " + scale.symbol() + ", whose values are "
                                + between(ends),
                        "The pump set gives up to about " + channel.print(range.high()) + fit,
                        say(
                                        channel,
                                        others.isEmpty()
                                                ? scale.symbol()
                                                : others.get(0).symbol()) + ", or the unit of the head if it is right")
                .at(column.place());
    }

    private void take(LogColumn column, Scale scale, String why) {
        Channel channel = column.channel().orElseThrow();
        found.put(channel, scale);
        taken.add("'" + column.head() + "' read as " + channel.words() + " in " + scale.symbol() + ", " + why
                + (scale.about().isEmpty() ? "" : "; " + scale.about()));
    }

    private List<Scale> fitting(LogColumn column, double[] ends) {
        return Scale.common(column.channel().orElseThrow()).stream()
                .map(unit -> Scale.of(column.channel().orElseThrow(), unit, set))
                .flatMap(Optional::stream)
                .filter(scale -> fits(column, scale, ends))
                .toList();
    }

    private boolean fits(LogColumn column, Scale scale, double[] ends) {
        Channel channel = column.channel().orElseThrow();
        CleaningRules.Range range = possible.possible().get(channel);
        if (channel == Channel.OUTDOOR) {
            return scale.si(ends[0]) >= range.low() && scale.si(ends[1]) <= range.high();
        }
        double least = LEAST.getOrDefault(channel, LEAST_OTHER) * range.high();
        return !tooHigh(column, scale, ends) && scale.si(ends[1]) >= least;
    }

    private boolean tooHigh(LogColumn column, Scale scale, double[] ends) {
        return scale.si(ends[1])
                > possible.possible().get(column.channel().orElseThrow()).high();
    }

    private static String say(Channel channel, String unit) {
        return "Say the unit, as in units: [" + LogHead.key(channel) + ": '" + unit + "']";
    }

    private static String symbols(List<Scale> scales) {
        return String.join(" or ", scales.stream().map(Scale::symbol).toList());
    }

    private static String between(double[] ends) {
        return "mostly " + Numbers.print(ends[0]) + " to " + Numbers.print(ends[1]);
    }
}

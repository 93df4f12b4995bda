package headrace.script;

import headrace.estimate.Cause;
import headrace.estimate.ErrorBudget;
import headrace.estimate.MapFactors;
import headrace.estimate.MeasuredPoint;
import headrace.estimate.MeasuredPowerMap;
import headrace.estimate.PowerMap;
import headrace.estimate.Reading;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Torque;
import java.util.List;
import java.util.Map;

/** Words about what is read at a pump set, how far it may be off, and maps that are not a curve with losses. */
public final class ReadingWords implements Words {
    private static final String ERRORS =
            "How far readings and map may be off: noise of readings as one standard deviation, what is systematic as half"
                    + " the width of its range; a share, a fixed part, or a list of both.";

    @Override
    public String subject() {
        return "Readings and maps";
    }

    /** States errors. */
    @Word(
            help = ERRORS,
            example = "readingErrors(power: [1.percent, 10.W], speed: 0.2.percent, powerMap: 3.percent)",
            choices = {
                "power: noise of the wire power reading",
                "torque: noise of the torque reading",
                "head: noise of the head reading",
                "speed: noise of the speed reading",
                "meterScale: half the range of the scale of the power meter",
                "grade: the acceptance grade of the pump by ISO 9906, '1B', '1E', '2B' or '3B', for powerMap and headMap",
                "powerMap: half the tolerance of the power of the pump's map",
                "headMap: half the tolerance of the head of the pump's map",
                "losses: half the range of the losses of motor and drive",
                "density: half the range of the density of the liquid"
            })
    public static ErrorBudget readingErrors(Map<String, ?> given) {
        Choices choices = Choices.of(
                "readingErrors",
                given,
                "power",
                "torque",
                "head",
                "speed",
                "meterScale",
                "grade",
                "powerMap",
                "headMap",
                "losses",
                "density");
        ErrorBudget budget = ErrorBudget.NONE;
        budget = error(budget, choices, "power", Cause.POWER_READING, Power.KIND);
        budget = error(budget, choices, "torque", Cause.TORQUE_READING, Torque.KIND);
        budget = error(budget, choices, "head", Cause.HEAD_READING, Head.KIND);
        budget = error(budget, choices, "speed", Cause.SPEED_READING, Speed.KIND);
        budget = share(budget, choices, "meterScale", Cause.METER_SCALE);
        budget = choices.has("grade") ? budget.withGrade(choices.text("grade")) : budget;
        budget = share(budget, choices, "powerMap", Cause.POWER_MAP);
        budget = share(budget, choices, "headMap", Cause.HEAD_MAP);
        budget = share(budget, choices, "losses", Cause.LOSSES);
        return share(budget, choices, "density", Cause.DENSITY);
    }

    private static ErrorBudget share(ErrorBudget budget, Choices choices, String name, Cause cause) {
        return choices.has(name) ? budget.with(cause, choices.ratio(name).value(), 0) : budget;
    }

    private static <Q extends Quantity<Q>> ErrorBudget error(
            ErrorBudget budget, Choices choices, String name, Cause cause, Kind<Q> kind) {
        if (!choices.has(name)) {
            return budget;
        }
        Object value = choices.object(name, Object.class);
        double relative = 0;
        double fixed = 0;
        for (Object part : value instanceof List<?> parts ? parts : List.of(value)) {
            if (part instanceof Ratio share) {
                relative = share.value();
            } else {
                fixed = Wanted.quantity(kind, part, "the choice " + name + ": of readingErrors")
                        .si();
            }
        }
        return budget.with(cause, relative, fixed);
    }

    /** Makes a map of measured wire power. */
    @Word(
            help =
                    "A map of wire power and head as measured on a pump set at two speeds or more, without a model of losses.",
            example = "wirePowerMap(name: 'P-A', points: measured)",
            choices = {
                "name: the name of the pump",
                "points: readings, each a list of flow, head, wire power and speed",
                "liquid: what was pumped; water at 20 °C unless chosen"
            })
    public static MeasuredPowerMap wirePowerMap(Map<String, ?> given) {
        Choices choices = Choices.of("wirePowerMap", given, "name", "points", "liquid");
        String parts = "flow, head, wire power and speed";
        List<MeasuredPoint> points = choices.object("points", List.class, List.of()) instanceof List<?> rows
                ? rows.stream().map(row -> measured(row, parts)).toList()
                : List.of();
        return MeasuredPowerMap.of(
                choices.text("name"),
                choices.object("liquid", Liquid.class, Liquid.water(Temperature.celsius(20))),
                points);
    }

    private static MeasuredPoint measured(Object row, String parts) {
        Object[] values = Rows.of(row, 4, "a point of wirePowerMap", parts);
        return new MeasuredPoint(
                Wanted.flow(values[0], "the flow of a point of wirePowerMap"),
                Wanted.head(values[1], "the head of a point of wirePowerMap"),
                Wanted.power(values[2], "the power of a point of wirePowerMap"),
                Wanted.speed(values[3], "the speed of a point of wirePowerMap"));
    }

    /** Changes a map. */
    @Word(
            help =
                    "The map of a pump set that takes another power and gives another head than its curve says, for trials.",
            example = "changedMap(set, power: 104.percent, offset: 60.W, head: 97.percent)",
            choices = {
                "power: the shaft power as a share of that of the curve; the whole unless chosen",
                "offset: a friction of constant torque, as its power at the speed of the curve; none unless chosen",
                "head: the head as a share of that of the curve; the whole unless chosen"
            })
    public static PowerMap changedMap(Map<String, ?> given, Object set) {
        Choices choices = Choices.of("changedMap", given, "power", "offset", "head");
        MapFactors factors = new MapFactors(
                choices.ratio("power", Ratio.of(1)).value(),
                choices.quantity("offset", Power.KIND, Power.ZERO).watts(),
                choices.ratio("head", Ratio.of(1)).value());
        return EstimateWords.map(set, "changedMap").calibrated(factors, "changed for a trial");
    }

    /** Reads a map forwards. */
    @Word(
            help =
                    "What would be read without any error at a flow and a speed of a pump set: wire power, head and speed.",
            example = "readingAt(set, 40.m3ph, 1250.rpm)")
    public static Reading readingAt(Object set, Object flow, Object speed) {
        PowerMap map = EstimateWords.map(set, "readingAt");
        Speed at = Wanted.speed(speed, "the speed of readingAt");
        Flow wanted = Wanted.flow(flow, "the flow of readingAt");
        double s = at.over(map.speed()).value();
        double q = wanted.si();
        if (!(s >= map.slowest() && s <= map.fastest() && q >= map.lowestFlow(s) && q <= map.highestFlow(s))) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "Asked for the readings of " + map.name() + " at " + wanted + " and " + at,
                    "Its map covers " + map.speed().times(map.slowest()) + " to "
                            + map.speed().times(map.fastest()) + ", and flows up to "
                            + Flow.cubicMetresPerSecond(map.highestFlow(1)) + " at " + map.speed()
                            + ", in proportion to speed",
                    "Ask inside that range");
        }
        return Reading.of(Power.watts(map.wireWatts(q, s)), at).with(Head.metres(Math.max(0, map.headMetres(q, s))));
    }
}

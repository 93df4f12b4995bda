package headrace.script;

import headrace.control.ControlLaw;
import headrace.control.EstimatedLaw;
import headrace.energy.EstimatedYear;
import headrace.energy.LoadProfile;
import headrace.estimate.Cause;
import headrace.estimate.ErrorBudget;
import headrace.estimate.FlowDraws;
import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowEstimator;
import headrace.estimate.MapFactors;
import headrace.estimate.MeasuredPoint;
import headrace.estimate.MeasuredPowerMap;
import headrace.estimate.Method;
import headrace.estimate.PowerMap;
import headrace.estimate.Reading;
import headrace.estimate.ThroughLosses;
import headrace.estimate.UncertaintyMap;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Torque;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Words about flow and head without a flow meter. */
public final class EstimateWords implements Words {
    private static final String ESTIMATOR =
            "Flow and head of a pump set, or of a map of its measured wire power, from power and speed and the like.";
    private static final String ERRORS =
            "How far readings and map may be off: noise of readings as one standard deviation, what is systematic as half"
                    + " the width of its range; a share, a fixed part, or a list of both.";
    private static final String ESTIMATE =
            "Every flow, with its head, that a reading can mean, and how sure each is; from power and speed, torque and"
                    + " speed, power and head, head and speed, or power, head and speed mixed.";
    private static final String DRAWS =
            "What errors drawn at random make of an estimate: the band that holds 95 % of the draws.";
    private static final String DRAWS_EXAMPLE = "drawFlows(estimate, draws: 20000, seed: 7)";
    private static final String YEAR =
            "A year under a law on estimates beside the same law with sensors: heads, hours short and energy, with the band"
                    + " of pumps that differ from their map as its errors allow.";
    private static final String YEAR_EXAMPLE =
            "estimatedYear(set, onEstimates(quadratic(design, minimumHead: 35.percent), estimator), year, draws: 100)";
    private static final String MAP =
            "How sure an estimated flow would be over flow and speed, with blind and ambiguous zones hatched.";
    private static final String BY =
            "by: 'power and speed' unless chosen, or 'torque and speed', 'power and head', 'head and speed', 'mix'";

    @Override
    public String subject() {
        return "Flow without a flow meter";
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
        return map(set, "changedMap").calibrated(factors, "changed for a trial");
    }

    static PowerMap map(Object given, String word) {
        if (given instanceof FlowEstimator estimator) {
            return estimator.map();
        }
        return given instanceof PowerMap map
                ? map
                : ThroughLosses.of(Wanted.object(PumpSet.class, given, "the pump set of " + word));
    }

    /** Makes an estimator. */
    @Word(help = ESTIMATOR, example = "flowEstimator(set)")
    public static FlowEstimator flowEstimator(Object set) {
        return flowEstimator(Map.of(), set);
    }

    /** Makes an estimator. */
    @Word(
            help = ESTIMATOR,
            example =
                    "flowEstimator(set, errors: readingErrors(power: 1.percent, speed: 0.2.percent), design: 60.m3ph)",
            choices = {
                "errors: of readings and map, as readingErrors states them; usual ones are assumed otherwise, and noted",
                "design: the flow of which shares are printed; best-efficiency flow unless chosen",
                "liquid: what is pumped; that of the curve unless chosen"
            })
    public static FlowEstimator flowEstimator(Map<String, ?> given, Object set) {
        Choices choices = Choices.of("flowEstimator", given, "errors", "design", "liquid");
        PowerMap map = map(set, "flowEstimator");
        FlowEstimator made = FlowEstimator.of(
                choices.has("liquid") ? map.in(choices.object("liquid", Liquid.class)) : map,
                choices.object("errors", ErrorBudget.class, ErrorBudget.ASSUMED));
        return choices.has("design") ? made.withDesign(choices.quantity("design", Flow.KIND)) : made;
    }

    static FlowEstimator estimator(Object given, String word) {
        return Wanted.object(FlowEstimator.class, given, "the estimator of " + word);
    }

    /** Reads a map forwards. */
    @Word(
            help =
                    "What would be read without any error at a flow and a speed of a pump set: wire power, head and speed.",
            example = "readingAt(set, 40.m3ph, 1250.rpm)")
    public static Reading readingAt(Object set, Object flow, Object speed) {
        PowerMap map = map(set, "readingAt");
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

    /** Estimates a flow. */
    @Word(help = ESTIMATE, example = "estimateFlow(estimator, readingAt(set, 40.m3ph, 1250.rpm))")
    public static FlowEstimate estimateFlow(Object estimator, Object reading) {
        return estimator(estimator, "estimateFlow")
                .estimate(Wanted.object(Reading.class, reading, "the reading of estimateFlow"));
    }

    /** Estimates a flow. */
    @Word(
            help = ESTIMATE,
            example = "estimateFlow(estimator, power: 2.6.kW, speed: 1250.rpm)",
            choices = {
                "power: the wire power",
                "torque: the torque at the shaft",
                "head: the head of the pump",
                "speed: the speed",
                "readings: of how many readings these are the means; 1 unless chosen",
                "correlation: of the noise of one reading with the next, from 0 to below 1; 0 unless chosen"
            })
    public static FlowEstimate estimateFlow(Map<String, ?> given, Object estimator) {
        Choices choices =
                Choices.of("estimateFlow", given, "power", "torque", "head", "speed", "readings", "correlation");
        Reading reading = Reading.NONE;
        reading = choices.has("power") ? reading.with(choices.quantity("power", Power.KIND)) : reading;
        reading = choices.has("torque") ? reading.with(choices.quantity("torque", Torque.KIND)) : reading;
        reading = choices.has("head") ? reading.with(choices.head("head")) : reading;
        reading = choices.has("speed") ? reading.with(choices.quantity("speed", Speed.KIND)) : reading;
        FlowEstimator made = estimator(estimator, "estimateFlow");
        if (choices.has("readings")) {
            made = made.averagedOver(choices.whole("readings"), choices.number("correlation", 0));
        }
        return made.estimate(reading);
    }

    /** Draws errors. */
    @Word(help = DRAWS, example = DRAWS_EXAMPLE)
    public static FlowDraws drawFlows(Object estimate) {
        return drawFlows(Map.of(), estimate);
    }

    /** Draws errors. */
    @Word(
            help = DRAWS,
            example = DRAWS_EXAMPLE,
            choices = {
                "draws: how many, from 100 to 10 million; 100 000 unless chosen",
                "seed: the same seed gives the same draws; 1 unless chosen",
                "near: a flow near the one to follow, where the reading can mean several"
            })
    public static FlowDraws drawFlows(Map<String, ?> given, Object estimate) {
        Choices choices = Choices.of("drawFlows", given, "draws", "seed", "near");
        FlowEstimate made = Wanted.object(FlowEstimate.class, estimate, "the estimate of drawFlows");
        int draws = choices.whole("draws", 100_000);
        if (draws < 100 || draws > 10_000_000) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "Asked for " + draws + " draws",
                    "From 100 to 10 million say something and fit into memory",
                    "100 000 settle the ends of a band to about 1 % of its width");
        }
        return FlowDraws.of(
                made,
                choices.has("near") ? made.nearest(choices.quantity("near", Flow.KIND)) : made.only(),
                draws,
                choices.whole("seed", 1));
    }

    /** Maps the uncertainty. */
    @Word(help = MAP, example = "uncertaintyMap(estimator)")
    public static UncertaintyMap uncertaintyMap(Object estimator) {
        return uncertaintyMap(Map.of(), estimator);
    }

    /** Maps the uncertainty. */
    @Word(help = MAP, example = "uncertaintyMap(estimator, by: 'head and speed')", choices = BY)
    public static UncertaintyMap uncertaintyMap(Map<String, ?> given, Object estimator) {
        Choices choices = Choices.of("uncertaintyMap", given, "by");
        return UncertaintyMap.of(estimator(estimator, "uncertaintyMap"), method(choices, "uncertaintyMap"));
    }

    /** Runs a law on estimates. */
    @Word(
            help = "A control law without sensors: run on flow and head estimated from power and speed. The map of the"
                    + " estimator is what the controller believes; the pump set it is used with is the real one.",
            example = "onEstimates(quadratic(design, minimumHead: 35.percent), estimator)")
    public static ControlLaw onEstimates(Object law, Object estimator) {
        return EstimatedLaw.of(
                Wanted.object(ControlLaw.class, law, "the law of onEstimates"), estimator(estimator, "onEstimates"));
    }

    /** Runs a year on estimates. */
    @Word(help = YEAR, example = YEAR_EXAMPLE)
    public static EstimatedYear estimatedYear(Object set, Object law, Object profile) {
        return estimatedYear(Map.of(), set, law, profile);
    }

    /** Runs a year on estimates. */
    @Word(
            help = YEAR,
            example = YEAR_EXAMPLE,
            choices = {
                "draws: how many pumps, from 100 to 10 000; 200 unless chosen",
                "seed: the same seed gives the same pumps; 1 unless chosen"
            })
    public static EstimatedYear estimatedYear(Map<String, ?> given, Object set, Object law, Object profile) {
        Choices choices = Choices.of("estimatedYear", given, "draws", "seed");
        int draws = choices.whole("draws", 200);
        if (draws < 100 || draws > 10_000) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "Asked for " + draws + " drawn pumps",
                    "From 100 to 10 000 say something in a time that can be waited for",
                    "200 settle the ends of a band to a few per cent of its width");
        }
        return EstimatedYear.of(
                Wanted.object(PumpSet.class, set, "the pump set of estimatedYear"),
                Wanted.object(EstimatedLaw.class, law, "the law of estimatedYear, as onEstimates makes it"),
                Wanted.object(LoadProfile.class, profile, "the load profile of estimatedYear"),
                draws,
                choices.whole("seed", 1));
    }

    static Method method(Choices choices, String word) {
        String name = choices.text("by", Method.POWER_AND_SPEED.toString());
        return Arrays.stream(Method.values())
                .filter(method -> method == Method.MIX
                        ? name.equals("mix")
                        : method.toString().equals(name))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "'" + name + "' was given for the choice by: of " + word,
                        "It must be 'power and speed', 'torque and speed', 'power and head', 'head and speed' or 'mix'",
                        "Name what would be read"));
    }
}

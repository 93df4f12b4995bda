package headrace.script;

import headrace.control.ControlLaw;
import headrace.control.EstimatedLaw;
import headrace.energy.EstimatedYear;
import headrace.energy.LoadProfile;
import headrace.estimate.ErrorBudget;
import headrace.estimate.FlowDraws;
import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowEstimator;
import headrace.estimate.Method;
import headrace.estimate.PowerMap;
import headrace.estimate.Reading;
import headrace.estimate.ThroughLosses;
import headrace.estimate.UncertaintyMap;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Speed;
import headrace.units.Torque;
import java.util.Arrays;
import java.util.Map;

/** Words about flow and head without a flow meter. */
public final class EstimateWords implements Words {
    private static final String ESTIMATOR =
            "Flow and head of a pump set, or of a map of its measured wire power, from power and speed and the like.";
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

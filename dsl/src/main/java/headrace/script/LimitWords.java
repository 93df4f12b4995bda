package headrace.script;

import headrace.curve.PumpCurve;
import headrace.energy.RegionHours;
import headrace.energy.StrategyComparison;
import headrace.liquid.Liquid;
import headrace.operation.limit.DeadHead;
import headrace.operation.limit.HeatRise;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.PumpLimits;
import headrace.operation.limit.ReachableRegion;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Mass;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.TemperatureDifference;
import headrace.units.Volume;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words about how far a pump set may go. */
public final class LimitWords implements Words {
    private static final String LIMITS =
            "The limits of a pump set over all that it can reach: operating region, least flows, overload, torque over"
                    + " speed.";
    private static final String HOURS =
            "The hours of the year that each law of a comparison runs the pump in its operating region.";
    static final String FROM = "from: the least flow that the branch lets one pump have; 0 unless chosen";
    static final String TO =
            "to: the greatest flow that the branch lets one pump have; the end of its curve unless chosen";
    private static final String REGION =
            "region: an operatingRegion; 70 to 120 % and 50 to 125 % are assumed otherwise";

    @Override
    public String subject() {
        return "Limits of a pump";
    }

    /** States an operating region. */
    @Word(
            help =
                    "The preferred and the allowable region that a pump's maker states, in shares of best-efficiency flow.",
            example = "operatingRegion(preferred: [75.percent, 115.percent], allowable: [40.percent, 125.percent])",
            choices = {
                "preferred: a list of two shares; 70 to 120 % unless chosen",
                "allowable: a list of two shares; always needed"
            })
    public static OperatingRegion operatingRegion(Map<String, ?> given) {
        Choices choices = Choices.of("operatingRegion", given, "preferred", "allowable");
        OperatingRegion usual = OperatingRegion.USUAL;
        List<Ratio> preferred = choices.has("preferred")
                ? pair(choices, "preferred")
                : List.of(usual.preferredFrom(), usual.preferredTo());
        List<Ratio> allowable = pair(choices, "allowable");
        return OperatingRegion.of(preferred.get(0), preferred.get(1), allowable.get(0), allowable.get(1));
    }

    private static List<Ratio> pair(Choices choices, String name) {
        List<?> two = choices.object(name, List.class);
        if (two.size() != 2) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "A list of " + two.size() + " was given for the choice " + name + ": of operatingRegion",
                    "It must be a list of two shares, where the region begins and where it ends",
                    "Write it as [70.percent, 120.percent]");
        }
        return two.stream()
                .map(share -> Wanted.ratio(share, "the choice " + name + ": of operatingRegion"))
                .toList();
    }

    /** Finds limits. */
    @Word(help = LIMITS, example = "limits(set)")
    public static PumpLimits limits(Object set) {
        return limits(Map.of(), set);
    }

    /** Finds limits. */
    @Word(
            help = LIMITS,
            example = "limits(set, to: 65.m3ph, leastStable: 28.percent, rise: 2.K)",
            choices = {
                REGION,
                "leastStable: the maker's least stable flow as a share of best-efficiency flow; 30 % is assumed otherwise",
                "rise: how far one passage may warm the liquid, up to 8 K; 2 K is assumed otherwise",
                FROM,
                TO,
                "liquid: the liquid when it is heaviest; that of the curve unless chosen"
            })
    public static PumpLimits limits(Map<String, ?> given, Object set) {
        Choices choices = Choices.of("limits", given, "region", "leastStable", "rise", "from", "to", "liquid");
        ReachableRegion reach = reach(choices, set, "limits");
        return new PumpLimits(
                choices.has("liquid") ? reach.in(choices.object("liquid", Liquid.class)) : reach,
                choices.object("region", OperatingRegion.class, OperatingRegion.USUAL),
                choices.has("leastStable") ? Optional.of(choices.ratio("leastStable")) : Optional.empty(),
                choices.has("rise")
                        ? Optional.of(choices.quantity("rise", TemperatureDifference.KIND))
                        : Optional.empty());
    }

    /** Returns what a pump set can reach between the choices {@code from} and {@code to}. */
    static ReachableRegion reach(Choices choices, Object set, String word) {
        PumpSet pumps = Wanted.object(PumpSet.class, set, "the pump set of " + word);
        ReachableRegion reach = ReachableRegion.of(pumps);
        if (!choices.has("from") && !choices.has("to")) {
            return reach;
        }
        Flow end = pumps.curve().atSpeed(pumps.maximumSpeed()).extendedHighestFlow();
        return reach.between(
                choices.quantity("from", Flow.KIND, Flow.ZERO),
                choices.has("to") ? choices.quantity("to", Flow.KIND) : end);
    }

    /** Counts hours. */
    @Word(help = HOURS, example = "regionHours(comparison)")
    public static List<RegionHours> regionHours(Object comparison) {
        return regionHours(Map.of(), comparison);
    }

    /** Counts hours. */
    @Word(
            help = HOURS,
            example = "regionHours(comparison, region: operatingRegion(allowable: [40.percent, 125.percent]))",
            choices = REGION)
    public static List<RegionHours> regionHours(Map<String, ?> given, Object comparison) {
        Choices choices = Choices.of("regionHours", given, "region");
        OperatingRegion region = choices.object("region", OperatingRegion.class, OperatingRegion.USUAL);
        StrategyComparison laws = Wanted.object(StrategyComparison.class, comparison, "the comparison of regionHours");
        return laws.laws().stream()
                .map(year -> RegionHours.of(laws.set(), year, region))
                .toList();
    }

    /** Computes a heat rise. */
    @Word(
            help = "By how much a pump warms its liquid in one passage, at a flow and the speed of its curve.",
            example = "heatRise(curve, 5.m3ph)")
    public static TemperatureDifference heatRise(Object curve, Object flow) {
        PumpCurve pump = CurveWords.curve(curve, "heatRise");
        return HeatRise.at(pump.at(Wanted.flow(flow, "the flow of heatRise")), pump.liquid());
    }

    /** Computes a time against a closed valve. */
    @Word(
            help =
                    "How long a pump takes to heat its filling against a closed valve, if it gives off no heat. Never use this"
                            + " time as permission.",
            example = "deadHeadTime(curve, filling: 6.litre, casing: 40.kg, limit: 80.degC)",
            choices = {
                "filling: the volume of liquid in the casing",
                "casing: the mass of the metal that warms with it; none unless chosen, which is careful",
                "limit: the temperature that is reached"
            })
    public static DeadHead deadHeadTime(Map<String, ?> given, Object curve) {
        Choices choices = Choices.of("deadHeadTime", given, "filling", "casing", "limit");
        return DeadHead.of(
                CurveWords.curve(curve, "deadHeadTime"),
                choices.quantity("filling", Volume.KIND),
                choices.quantity("casing", Mass.KIND, Mass.ZERO),
                choices.quantity("limit", Temperature.KIND));
    }
}

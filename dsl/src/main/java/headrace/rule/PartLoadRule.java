package headrace.rule;

import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.energy.StrategyComparison;
import headrace.operation.OperatingPoint;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;

/**
 * A rule on the power of a pump at part flow, as data: at so much of design flow, at most so much of design wattage.
 *
 * <p>Design wattage is the power from the wire at the design point, drive included.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of design flow and of design wattage.
 *   <dt>Limits
 *   <dd>Loss models that keep the efficiency constant are refused: the rule asks what is lost at part load. The other
 *       requirements of the code (which systems, which valves, which reset) are not judged.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_RULE}, {@code CONSTANT_EFFICIENCY_REFUSED} or
 *       {@code RULE_WITHOUT_DESIGN}.
 *   <dt>Source
 *   <dd>Each rule names its own. The edition that binds locally decides.
 * </dl>
 *
 * @param id a short name
 * @param jurisdiction where it binds
 * @param edition the section and edition
 * @param flowFraction the share of design flow at which it is judged
 * @param powerFraction the share of design wattage that it allows
 * @param smallestMotor the motor from which on it binds
 * @param smallestHead the design head from which on it binds
 * @param source where it is printed
 */
public record PartLoadRule(
        String id,
        String jurisdiction,
        String edition,
        Ratio flowFraction,
        Ratio powerFraction,
        Power smallestMotor,
        Head smallestHead,
        String source) {
    /** At most 30 % of design wattage at 50 % of design flow, for motors of 2 hp and more. */
    public static final PartLoadRule THIRTY_PERCENT_AT_HALF_FLOW = new PartLoadRule(
            "30 % of design wattage at 50 % of design flow",
            "Washington State, USA; modelled on ASHRAE 90.1 and the IECC",
            "Washington State Energy Code, commercial, C403.4.4",
            Ratio.percent(50),
            Ratio.percent(30),
            Power.horsepower(2),
            "WAC 51-11C-40344 (read)");

    private static final String AMERICAN = "USA, where a state or city has adopted it";
    private static final String REMEMBERED =
            "ASHRAE 90.1, from memory, unconfirmed: read the edition that binds locally";

    /** The rules that are shipped. All judge at half flow; they differ in the motors that they bind and in where. */
    public static final List<PartLoadRule> SHIPPED = List.of(
            THIRTY_PERCENT_AT_HALF_FLOW,
            thirty(
                    "30 % at 50 % flow, motors from 7.5 hp",
                    "Washington State, USA",
                    "Washington State Energy Code of 2012, commercial, C403.2.13",
                    7.5,
                    "WAC 51-11C-403294 (read)"),
            thirty(
                            "30 % at 50 % flow, motors above 50 hp with heads above 100 ft",
                            AMERICAN, "ASHRAE 90.1-2001, -2004 and -2007, 6.5.4.1", 50, REMEMBERED)
                    .fromHead(Head.feet(100)),
            thirty(
                    "30 % at 50 % flow, chilled-water motors above 5 hp",
                    AMERICAN, "ASHRAE 90.1-2010, 6.5.4.1", 5, REMEMBERED));

    private static PartLoadRule thirty(
            String id, String jurisdiction, String edition, double horsepower, String source) {
        return new PartLoadRule(
                id, jurisdiction, edition, Ratio.percent(50), Ratio.percent(30), Power.horsepower(horsepower), source);
    }

    /** Makes a rule that binds at every head. */
    public PartLoadRule(
            String id,
            String jurisdiction,
            String edition,
            Ratio flowFraction,
            Ratio powerFraction,
            Power smallestMotor,
            String source) {
        this(id, jurisdiction, edition, flowFraction, powerFraction, smallestMotor, Head.ZERO, source);
    }

    /** Refuses fractions outside 0 to 100 %. */
    public PartLoadRule {
        if (!inside(flowFraction) || !inside(powerFraction) || smallestMotor.si() < 0 || smallestHead.si() < 0) {
            throw new Refusal(
                    RuleProblem.IMPOSSIBLE_RULE,
                    "Asked for a rule that allows " + powerFraction + " of design wattage at " + flowFraction
                            + " of design flow, for motors from " + smallestMotor + " and heads from " + smallestHead,
                    "Both shares lie above 0 % and at or below 100 %, and motor and head are 0 or more",
                    "Correct the rule");
        }
    }

    /** Returns this rule at another share of design flow. */
    public PartLoadRule at(Ratio flow) {
        return new PartLoadRule(id, jurisdiction, edition, flow, powerFraction, smallestMotor, smallestHead, source);
    }

    /** Returns this rule as one that binds from a design head on. */
    public PartLoadRule fromHead(Head least) {
        return new PartLoadRule(id, jurisdiction, edition, flowFraction, powerFraction, smallestMotor, least, source);
    }

    /**
     * Judges a law that is made for a design point.
     *
     * @throws Refusal with {@code RULE_WITHOUT_DESIGN} if it is made for none
     */
    public RuleVerdict judge(PumpSet set, ControlLaw law) {
        Duty design = law.design()
                .orElseThrow(() -> new Refusal(
                        RuleProblem.RULE_WITHOUT_DESIGN,
                        "Asked for a verdict on '" + law.name() + "' alone",
                        "This law is made for no design point, so there is no design wattage",
                        "Name the design point beside the law"));
        return judge(set, law, design);
    }

    /** Judges a law with the design wattage of a design point. */
    public RuleVerdict judge(PumpSet set, ControlLaw law, Duty design) {
        requireLossesAtPartLoad(set);
        OperatingPoint atDesign = OperatingPoint.at(set, design);
        Flow flow = design.flow().times(flowFraction);
        return RuleVerdict.of(this, set, atDesign, SteadyState.of(law, set, flow));
    }

    /** Judges every law of a comparison, in its order. */
    public List<RuleVerdict> judge(StrategyComparison comparison) {
        return comparison.laws().stream()
                .map(year -> judge(comparison.set(), year.law(), comparison.design()))
                .toList();
    }

    void requireLossesAtPartLoad(PumpSet set) {
        if (!set.driveTrain().model().followsLoad()) {
            throw new Refusal(
                    RuleProblem.CONSTANT_EFFICIENCY_REFUSED,
                    "Asked for the rule '" + id + "' with the loss model '"
                            + set.driveTrain().model().name() + "'",
                    "With constant efficiency the wire power falls with the shaft power alone, so what motor and drive"
                            + " lose at part load, which decides the rule, is left out",
                    "Use a loss model that follows load, such as 'separate' or 'combined'");
        }
    }

    @Override
    public String toString() {
        return id + " (" + edition + ")";
    }

    private static boolean inside(Ratio share) {
        return share.value() > 0 && share.value() <= 1;
    }
}

package headrace.script;

import headrace.circuit.Circuit;
import headrace.control.ControlLaw;
import headrace.data.Column;
import headrace.data.Table;
import headrace.drive.LossModel;
import headrace.energy.StrategyComparison;
import headrace.energy.load.LoadPattern;
import headrace.rule.LargestMinimumHead;
import headrace.rule.PartLoadCurve;
import headrace.rule.PartLoadRule;
import headrace.rule.RuleVerdict;
import headrace.rule.window.MinimumHeadWindow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Words about the rules of energy codes. An engineering estimate: the code as it binds locally decides. */
public final class RuleWords implements Words {
    private static final String PATTERNS = "The ways in which a load can lie over the branches of a circuit at several"
            + " loads: evenly, near and far branches first, each branch off in turn, and at random.";
    private static final String PATTERN =
            "One way in which a load can lie over the branches of a circuit: a share for all, and single flows by name.";
    private static final String RULE = "The rule that a pump takes at most 30 % of its design wattage at 50 % of design"
            + " flow (WAC 51-11C-40344), or one of your own.";
    private static final String LARGEST =
            "The largest minimum head of a quadratic law that passes the rule, for the loss"
                    + " model of the pump set and the others beside it, and what decides.";
    private static final String LARGEST_EXAMPLE = "largestMinimumHead(set, design, partLoadRule)";

    @Override
    public String subject() {
        return "Energy codes";
    }

    /** Returns the shipped rule. */
    @Word(help = RULE, example = "partLoadRule")
    public static PartLoadRule partLoadRule() {
        return PartLoadRule.THIRTY_PERCENT_AT_HALF_FLOW;
    }

    /** Lists the rules that are shipped. */
    @Word(
            help = "The part-load rules that are shipped, each with where it binds, its edition and its source.",
            example = "partLoadRules()")
    public static List<PartLoadRule> partLoadRules() {
        return PartLoadRule.SHIPPED;
    }

    /** Lays the curves of compliance modelling beside a law. */
    @Word(
            help = "A law's share of design power at a share of design flow, beside the curves that code-compliance"
                    + " modelling takes.",
            example = "partLoadShares(set, quadratic(design, minimumHead: 35.percent), 50.percent)")
    public static Table partLoadShares(Object set, Object law, Object flow) {
        Ratio share = Wanted.ratio(flow, "the flow of partLoadShares");
        PartLoadRule at = PartLoadRule.THIRTY_PERCENT_AT_HALF_FLOW.at(share);
        RuleVerdict own = at.judge(
                ControlWords.set(set, "partLoadShares"),
                Wanted.object(ControlLaw.class, law, "the law of partLoadShares"));
        Table table = Table.of(
                        "Share of design power at " + share + " of design flow",
                        Column.text("pumping"),
                        Column.of("share", Ratio.KIND))
                .row("'" + own.law().name() + "', at the wire", own.share());
        for (PartLoadCurve curve : PartLoadCurve.PUBLISHED) {
            table = table.row("compliance modelling: " + curve.name(), curve.at(share));
        }
        return table;
    }

    /** Makes a rule of the user's own. */
    @Word(
            help = RULE,
            example = "partLoadRule",
            choices = {
                "name: what it is called; always needed for a rule of your own",
                "flow: share of design flow at which it is judged; 50 % unless chosen",
                "power: share of design wattage that it allows; 30 % unless chosen",
                "smallestMotor: motor from which it binds; none unless chosen",
                "smallestHead: design head from which it binds; none unless chosen",
                "jurisdiction: where it binds",
                "edition: its section and edition",
                "source: where it is printed"
            })
    public static PartLoadRule partLoadRule(Map<String, ?> given) {
        Choices choices = Choices.of(
                "partLoadRule",
                given,
                "name",
                "flow",
                "power",
                "smallestMotor",
                "smallestHead",
                "jurisdiction",
                "edition",
                "source");
        PartLoadRule shipped = partLoadRule();
        return new PartLoadRule(
                choices.text("name"),
                choices.text("jurisdiction", "not stated"),
                choices.text("edition", "not stated"),
                choices.ratio("flow", shipped.flowFraction()),
                choices.ratio("power", shipped.powerFraction()),
                choices.quantity("smallestMotor", Power.KIND, Power.ZERO),
                choices.quantity("smallestHead", Head.KIND, Head.ZERO),
                choices.text("source", "stated by the user"));
    }

    /** Judges a law made for a design point. */
    @Word(
            help = "Says whether a control law passes a rule, with the number and the margin.",
            example = "judge(set, quadratic(design, minimumHead: 35.percent), partLoadRule)")
    public static RuleVerdict judge(Object set, Object law, Object rule) {
        return rule(rule, "judge")
                .judge(ControlWords.set(set, "judge"), Wanted.object(ControlLaw.class, law, "the law of judge"));
    }

    /** Judges every law of a comparison. */
    @Word(
            help = "Says of every law of a comparison whether it passes a rule.",
            example = "judge(comparison, partLoadRule)")
    public static List<RuleVerdict> judge(Object comparison, Object rule) {
        return rule(rule, "judge")
                .judge(Wanted.object(StrategyComparison.class, comparison, "the comparison of judge"));
    }

    /** Finds the largest minimum head that passes. */
    @Word(help = LARGEST, example = LARGEST_EXAMPLE)
    public static LargestMinimumHead largestMinimumHead(Object set, Object design, Object rule) {
        return largestMinimumHead(Map.of(), set, design, rule);
    }

    /** Finds the largest minimum head that passes, with loss models of the user's choice. */
    @Word(
            help = LARGEST,
            example = LARGEST_EXAMPLE,
            choices = "losses: a list of loss models; all that follow load unless chosen")
    public static LargestMinimumHead largestMinimumHead(Map<String, ?> given, Object set, Object design, Object rule) {
        Choices choices = Choices.of("largestMinimumHead", given, "losses");
        if (!choices.has("losses")) {
            return LargestMinimumHead.of(
                    ControlWords.set(set, "largestMinimumHead"),
                    ControlWords.point(design, "largestMinimumHead"),
                    rule(rule, "largestMinimumHead"));
        }
        List<LossModel> models = new ArrayList<>();
        for (Object model : choices.object("losses", List.class)) {
            models.add(DriveWords.lossModel(model, "the choice losses: of largestMinimumHead"));
        }
        return LargestMinimumHead.of(
                ControlWords.set(set, "largestMinimumHead"),
                ControlWords.point(design, "largestMinimumHead"),
                rule(rule, "largestMinimumHead"),
                models);
    }

    /** Makes a load pattern. */
    @Word(
            help = PATTERN,
            example = "loadPattern('all at half', loop, load: 50.percent)",
            choices = {
                "load: the share of its design flow that is asked of each branch; all of it unless chosen",
                "demands: the flow of single branches by their names"
            })
    public static LoadPattern loadPattern(Map<String, ?> given, Object name, Object circuit) {
        Circuit loop = Wanted.object(Circuit.class, circuit, "the circuit of loadPattern");
        Choices choices = Choices.of("loadPattern", given, "load", "demands");
        LoadPattern.requireLoad(choices.ratio("load", Ratio.of(1)));
        return new LoadPattern(
                Wanted.object(CharSequence.class, name, "the name of a load pattern")
                        .toString(),
                CircuitWords.demands(loop, choices));
    }

    /** Makes the load pattern of full load. */
    @Word(help = PATTERN, example = "loadPattern('all at full load', loop)")
    public static LoadPattern loadPattern(Object name, Object circuit) {
        return loadPattern(Map.of(), name, circuit);
    }

    /** Makes the load patterns of a circuit. */
    @Word(help = PATTERNS, example = "loadPatterns(loop)")
    public static List<LoadPattern> loadPatterns(Object circuit) {
        return loadPatterns(Map.of(), circuit);
    }

    /** Makes the load patterns of a circuit. */
    @Word(
            help = PATTERNS,
            example = "loadPatterns(loop, loads: [30.percent, 60.percent])",
            choices = {
                "loads: a list of shares of the design load; 25, 50, 75 and 100 % unless chosen",
                "seed: the seed of the random ones; 1 unless chosen"
            })
    public static List<LoadPattern> loadPatterns(Map<String, ?> given, Object circuit) {
        Choices choices = Choices.of("loadPatterns", given, "loads", "seed");
        List<?> loads = choices.object(
                "loads",
                List.class,
                List.of(Ratio.percent(25), Ratio.percent(50), Ratio.percent(75), Ratio.percent(100)));
        return LoadPattern.all(
                Wanted.object(Circuit.class, circuit, "the circuit of loadPatterns"),
                loads.stream()
                        .map(load -> Wanted.ratio(load, "a load of loadPatterns"))
                        .toList(),
                choices.whole("seed", 1));
    }

    /** Finds the window of minimum heads. */
    @Word(
            help = "The minimum heads of a quadratic law that pass a part-load rule and starve no branch over load"
                    + " patterns; both ends are shown from both sides.",
            example = "minimumHeadWindow(set, design, loop, loadPatterns(loop), partLoadRule)")
    public static MinimumHeadWindow minimumHeadWindow(
            Object set, Object design, Object circuit, List<?> patterns, Object rule) {
        return MinimumHeadWindow.of(
                ControlWords.set(set, "minimumHeadWindow"),
                ControlWords.point(design, "minimumHeadWindow"),
                Wanted.object(Circuit.class, circuit, "the circuit of minimumHeadWindow"),
                patterns.stream()
                        .map(one -> Wanted.object(LoadPattern.class, one, "a pattern of minimumHeadWindow"))
                        .toList(),
                rule(rule, "minimumHeadWindow"));
    }

    private static PartLoadRule rule(Object rule, String word) {
        return Wanted.object(PartLoadRule.class, rule, "the rule of " + word);
    }
}

package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import headrace.rule.LargestMinimumHead;
import headrace.rule.MinimumHeadLimit;
import headrace.rule.PartLoadRule;
import headrace.rule.RuleVerdict;
import headrace.units.Power;
import headrace.units.Ratio;

/** How a part-load rule and what it says show themselves. */
final class RuleReports {
    private RuleReports() {}

    static Shown rule(PartLoadRule rule) {
        return Composed.titled("Part-load rule: " + rule.id())
                .line("At " + rule.flowFraction() + " of design flow a pump may take at most " + rule.powerFraction()
                        + " of its design wattage: the power from the wire at the design point, drive included.")
                .fact("edition", rule.edition())
                .fact("jurisdiction", rule.jurisdiction())
                .fact("binds from", binds(rule))
                .fact("source", rule.source())
                .shown();
    }

    private static String binds(PartLoadRule rule) {
        String motors = "motors of " + rule.smallestMotor();
        return rule.smallestHead().si() > 0 ? motors + " and heads of " + rule.smallestHead() : motors;
    }

    private static String said(RuleVerdict verdict) {
        return switch (verdict.outcome()) {
            case PASSES -> " passes the part-load rule";
            case FAILS -> " fails the part-load rule";
            case NOT_APPLICABLE -> ": the part-load rule is not applicable";
        };
    }

    static Shown verdict(RuleVerdict verdict) {
        return Composed.titled(PlainReports.capital(verdict.law().name()) + said(verdict))
                .line(PlainReports.capital(verdict.toString()) + ".")
                .fact("rule", verdict.rule())
                .fact("design wattage", verdict.designWattage())
                .fact("wattage at " + verdict.rule().flowFraction() + " flow", verdict.partWattage())
                .fact(
                        "share at the wire",
                        verdict.share() + ", " + verdict.rule().powerFraction() + " allowed")
                .fact("share at the shaft", verdict.shaftShare())
                .fact("share in the liquid", verdict.hydraulicShare())
                .shown(verdict, Caution.ESTIMATE);
    }

    static Shown largestMinimumHead(LargestMinimumHead answer) {
        Table table = Table.of(
                "Largest minimum head that passes, by loss model",
                Column.text("losses"),
                Column.text("answer"),
                Column.of("minimum head", Ratio.KIND),
                Column.of("share of design wattage", Ratio.KIND),
                Column.of("design wattage", Power.KIND));
        Composed composed = Composed.titled(
                "Largest minimum head that passes: " + answer.rule().id());
        for (MinimumHeadLimit limit : answer.limits()) {
            composed.line(PlainReports.capital(limit.toString()) + ".");
            table = table.row(
                    limit.model().name(),
                    answer(limit.outcome()),
                    limit.outcome() == MinimumHeadLimit.Outcome.NONE ? null : limit.minimumHead(),
                    limit.verdict().share(),
                    limit.verdict().designWattage());
        }
        return composed.line(answer.decides() + ".")
                .fact("hydraulic power alone", answer.hydraulicLimit() + " of design head, without any loss")
                .table(table)
                .shown(
                        answer,
                        "The rule sets the most that is allowed, not what serves every branch: see that none is starved"
                                + " before you lower the minimum head",
                        Caution.RETUNING,
                        Caution.ESTIMATE);
    }

    private static String answer(MinimumHeadLimit.Outcome outcome) {
        return switch (outcome) {
            case UP_TO -> "up to";
            case ALL -> "every one";
            case NONE -> "none";
        };
    }
}

package headrace.report;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.rule.MinimumHeadLimit;
import headrace.rule.window.Evidence;
import headrace.rule.window.LeastMinimumHead;
import headrace.rule.window.MinimumHeadWindow;
import headrace.rule.window.RuleEnd;
import headrace.units.Ratio;
import java.util.List;

/** How the window of minimum heads shows itself. */
final class WindowReport {
    private WindowReport() {}

    static Shown of(MinimumHeadWindow window) {
        LeastMinimumHead least = window.least();
        Composed composed = Composed.titled("Window of minimum heads for " + window.design())
                .line(smallest(least));
        for (RuleEnd end : window.upper()) {
            composed.line(verdict(end, least));
        }
        composed.fact("pattern that decides", "'" + least.decides().name() + "'")
                .fact("head it needs", least.needed())
                .fact("branch that starves first", least.branch());
        if (least.outcome() != LeastMinimumHead.Outcome.NONE) {
            composed.chart(chart(window));
        }
        composed.table(evidence(window));
        window.openers().forEach(opener -> composed.line("Would open it: " + opener + "."));
        return composed.shown(window, Caution.RETUNING, Caution.ESTIMATE);
    }

    private static String smallest(LeastMinimumHead least) {
        return switch (least.outcome()) {
            case FROM -> "Every branch is served from " + least.minimumHead() + " of the design head upwards.";
            case ANY -> "Every branch is served with any minimum head, even none.";
            case NONE ->
                "No minimum head serves every branch: '" + least.decides().name() + "' needs " + least.needed() + ".";
        };
    }

    private static String verdict(RuleEnd end, LeastMinimumHead least) {
        String limit = PlainReports.capital(end.limit().toString());
        if (least.outcome() == LeastMinimumHead.Outcome.NONE
                || end.limit().outcome() == MinimumHeadLimit.Outcome.NONE) {
            return limit + ".";
        }
        return limit
                + (end.isOpen(least)
                        ? ": " + Ratio.of(end.width().value()) + " of the design head to choose from."
                        : ": the window is empty, " + Ratio.of(-end.width().value())
                                + " of the design head are missing.");
    }

    private static Chart chart(MinimumHeadWindow window) {
        List<String> names = window.upper().stream()
                .map(end -> "losses '" + end.limit().model().name() + "'")
                .toList();
        double least = 100 * window.least().minimumHead().value();
        List<Double> starves = names.stream().map(name -> least).toList();
        List<Double> passes = window.upper().stream().map(WindowReport::upper).toList();
        return Chart.titled("Minimum heads")
                .across(Axis.of("Minimum head as a share of design head", "%").from(0))
                .bars(Bars.of(names)
                        .with("starves a branch below", Ink.ORANGE, starves)
                        .with("passes the rule up to", Ink.SKY, passes))
                .build();
    }

    private static double upper(RuleEnd end) {
        return end.limit().outcome() == MinimumHeadLimit.Outcome.NONE
                ? 0
                : 100 * end.limit().minimumHead().value();
    }

    private static Table evidence(MinimumHeadWindow window) {
        Table table = Table.of(
                "Both sides of each end",
                Column.text("end"),
                Column.of("just inside", Ratio.KIND),
                Column.text("there"),
                Column.of("just outside", Ratio.KIND),
                Column.text("and there"));
        for (Evidence each : window.serving().stream().toList()) {
            table = row(table, each);
        }
        for (RuleEnd end : window.upper()) {
            for (Evidence each : end.evidence().stream().toList()) {
                table = row(table, each);
            }
        }
        return table;
    }

    private static Table row(Table table, Evidence each) {
        return table.row(each.end(), each.inside(), each.insideSays(), each.outside(), each.outsideSays());
    }
}

package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import headrace.estimate.ErrorBudget;
import headrace.estimate.FlowDraws;
import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowEstimator;
import headrace.estimate.FlowRoot;
import headrace.estimate.UncertaintyMap;
import headrace.estimate.site.AgainstTruth;
import headrace.estimate.site.Calibration;
import headrace.units.Flow;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;

/** How estimates of flow and head, and what belongs to them, show themselves. */
final class EstimateReports {
    private EstimateReports() {}

    static Shown estimator(FlowEstimator estimator) {
        return Composed.titled("Flow of " + estimator.map().name() + " without a flow meter")
                .fact("map", estimator.map())
                .fact("shares of design are of", estimator.design())
                .table(budget(estimator.budget()))
                .shown(estimator);
    }

    static Shown errors(ErrorBudget budget) {
        return Composed.titled("Errors of readings and map" + (budget.assumed() ? ", assumed" : ""))
                .table(budget(budget))
                .shown();
    }

    private static Table budget(ErrorBudget budget) {
        return Table.of(
                        "Errors, one standard deviation of noise, half the width of what is systematic",
                        Column.text("cause"),
                        Column.text("error"),
                        Column.text("kind"))
                .rows(budget.parts().stream()
                        .map(part -> new Object[] {
                            part.cause().toString(),
                            part.toString()
                                    .substring(part.cause().toString().length())
                                    .strip(),
                            part.cause().systematic() ? "systematic" : "random"
                        })
                        .toList());
    }

    static Shown estimate(FlowEstimate estimate) {
        Composed composed =
                Composed.titled("Flow of " + estimate.estimator().map().name() + " from " + estimate.method());
        for (FlowRoot root : estimate.roots()) {
            composed.line(root.toString());
        }
        composed.fact("read", estimate.reading());
        for (FlowRoot root : estimate.roots()) {
            facts(composed, root, estimate);
        }
        return composed.chart(EstimateChart.of(estimate))
                .table(shares(estimate))
                .shown(estimate);
    }

    private static void facts(Composed composed, FlowRoot root, FlowEstimate estimate) {
        String at = estimate.roots().size() > 1 ? " at " + root.flow().value() : "";
        Flow design = estimate.estimator().design();
        composed.fact(
                        "expanded uncertainty of the flow, k = 2" + at,
                        root.flow().ofReading() + ", " + root.flow().of(design) + " of design flow " + design)
                .fact(
                        "standard uncertainty" + at,
                        root.flow().random() + " random, " + root.flow().systematic() + " systematic");
        if (Math.abs(root.steepness()) > 1e-6) {
            composed.fact(
                    "1 % of the reading is" + at, Numbers.print(Math.abs(1 / root.steepness())) + " % of the flow");
        }
    }

    private static Table shares(FlowEstimate estimate) {
        return Table.of(
                        "Share of each cause in the variance of the flow",
                        Column.of("flow", Flow.KIND),
                        Column.text("cause"),
                        Column.of("standard uncertainty", Flow.KIND),
                        Column.of("share", Ratio.KIND))
                .rows(estimate.roots().stream()
                        .flatMap(root -> root.shares().stream()
                                .map(share -> new Object[] {
                                    root.flow().value(), share.cause().toString(), share.flow(), share.share()
                                }))
                        .toList());
    }

    static Shown draws(FlowDraws draws) {
        FlowDraws.Counts counts = draws.counts();
        FlowRoot root = draws.root();
        return Composed.titled(
                        "Drawn flows of " + draws.estimate().estimator().map().name())
                .line("95 % of the draws: flow " + draws.lowFlow() + " to " + draws.highFlow() + ", head "
                        + draws.lowHead() + " to " + draws.highHead() + ".")
                .fact("estimate", root)
                .fact("mean and standard deviation of the flow", draws.meanFlow() + ", " + draws.deviationOfFlow())
                .fact("standard uncertainty by linear propagation", root.flow().standard())
                .fact("correlation of flow and head", Numbers.print(draws.correlation()))
                .fact(
                        "draws kept, below the map, above it",
                        counts.kept() + ", " + counts.below() + ", " + counts.above())
                .fact("draws that can mean another flow too", counts.twoFlows())
                .chart(EstimateChart.of(draws))
                .shown(draws);
    }

    static Shown map(UncertaintyMap map) {
        return Composed.titled("How sure a flow of " + map.estimator().map().name() + " is")
                .line(capital(map.toString()) + ".")
                .chart(UncertaintyChart.of(map))
                .shown(map);
    }

    static Shown swept(AgainstTruth swept) {
        return Composed.titled("Estimate against truth at " + swept.speed())
                .line(capital(swept.toString()) + ".")
                .chart(EstimateChart.of(swept))
                .shown(swept);
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    static Shown calibration(Calibration made) {
        return Composed.titled("Calibration of " + made.after().map().name() + " by " + made.kind())
                .line("Power times " + Numbers.print(made.factors().power()) + " with an offset of "
                        + Power.watts(made.factors().offsetWatts()) + ", head times "
                        + Numbers.print(made.factors().head()) + ".")
                .fact("mends", made.kind().mends())
                .fact("cannot mend", made.kind().leaves())
                .table(points(made))
                .chart(EstimateChart.of(made))
                .shown(
                        made,
                        made.kind() == Calibration.Kind.CLOSED_VALVE
                                ? new String[] {Caution.DEAD_HEAD, Caution.RESTART}
                                : new String[] {Caution.RESTART});
    }

    private static Table points(Calibration made) {
        return Table.of(
                        "Known points before and after",
                        Column.of("speed", Speed.KIND),
                        Column.of("wire power", Power.KIND),
                        Column.of("known flow", Flow.KIND),
                        Column.text("estimated before"),
                        Column.text("estimated after"),
                        Column.of("power off before", Ratio.KIND),
                        Column.of("power off after", Ratio.KIND))
                .rows(made.rows().stream().map(EstimateReports::row).toList());
    }

    private static Object[] row(Calibration.Row row) {
        return new Object[] {
            row.point().speed(),
            row.point().power(),
            row.point().flow(),
            row.before().map(Flow::toString).orElse("off the map"),
            row.after().map(Flow::toString).orElse("off the map"),
            rounded(row.powerBefore()),
            rounded(row.powerAfter())
        };
    }

    /** A power met to rounding is met. */
    private static Ratio rounded(Ratio share) {
        return Math.abs(share.value()) < 1e-9 ? Ratio.ZERO : share;
    }
}

package headrace.report.money;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Reference;
import headrace.data.Column;
import headrace.data.Table;
import headrace.economics.study.DriverRank;
import headrace.economics.study.Outcomes;
import headrace.economics.study.PaybackRange;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.units.Money;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** How a payback that is not known exactly shows itself: as a distribution, and with what drives it. */
public final class RangeReport {
    private static final Ratio LOW = Ratio.percent(5);
    private static final Ratio MIDDLE = Ratio.percent(50);
    private static final Ratio HIGH = Ratio.percent(95);
    private static final int STEPS = 120;

    private RangeReport() {}

    /** Shows the distributions against both baselines. */
    public static Shown of(PaybackRange range) {
        Composed shown = Composed.titled("Payback as a distribution, " + range.drawn());
        for (Outcomes each : range.both()) {
            shown.line("Against " + each.baseline() + " it pays back in less than 2 years with a probability of "
                    + each.probabilityOfPaybackBelow(Time.years(2)) + ", and gains over "
                    + range.study().model().years() + " years with " + each.probabilityOfGain() + ".");
        }
        shown.table(table(range)).chart(probability(range));
        try (Steps steps = Work.steps("what drives the paybacks", range.both().size())) {
            for (Outcomes each : range.both()) {
                steps.next();
                List<DriverRank> ranks = range.drivers(each);
                shown.table(drivers(range, ranks, each));
                if (!ranks.isEmpty()) {
                    shown.chart(tornado(ranks, each));
                }
            }
        }
        return shown.shown(range);
    }

    private static Table table(PaybackRange range) {
        String currency = range.study().currency();
        Table table = Table.of(
                "In nine draws of ten",
                Column.text("against"),
                Column.text("what"),
                Column.text("5 % lie below"),
                Column.text("half lie below"),
                Column.text("95 % lie below"));
        for (Outcomes each : range.both()) {
            table = table.row(
                            each.baseline(),
                            "simple payback",
                            years(each, LOW, false),
                            years(each, MIDDLE, false),
                            years(each, HIGH, false))
                    .row(
                            each.baseline(),
                            "discounted payback",
                            years(each, LOW, true),
                            years(each, MIDDLE, true),
                            years(each, HIGH, true))
                    .row(
                            each.baseline(),
                            "net present value" + (currency.isEmpty() ? "" : " in " + currency),
                            whole(each.netPresentValue(LOW)),
                            whole(each.netPresentValue(MIDDLE)),
                            whole(each.netPresentValue(HIGH)))
                    .row(each.baseline(), "internal rate", rate(each, LOW), rate(each, MIDDLE), rate(each, HIGH));
        }
        return table;
    }

    private static String years(Outcomes outcomes, Ratio share, boolean discounted) {
        return AppraisalReports.years(discounted ? outcomes.discountedPayback(share) : outcomes.simplePayback(share));
    }

    private static String whole(Money money) {
        return Numbers.print(Math.rint(money.amount()));
    }

    private static String rate(Outcomes outcomes, Ratio share) {
        return outcomes.internalRate(share).map(Ratio::toString).orElse("none");
    }

    private static Table drivers(PaybackRange range, List<DriverRank> ranks, Outcomes against) {
        String currency = range.study().currency();
        Table table = Table.of(
                "What drives the present value against " + against.baseline(),
                Column.text("driver"),
                Column.text("lowest tenth up to"),
                Column.text("highest tenth from"),
                Column.in("present value where lowest", currency),
                Column.in("present value where highest", currency));
        for (DriverRank rank : ranks) {
            String unit =
                    rank.driver().unit().isEmpty() ? "" : " " + rank.driver().unit();
            table = table.row(
                    rank.driver().words(),
                    Numbers.print(rank.tenth()) + unit,
                    Numbers.print(rank.ninetieth()) + unit,
                    rank.atLow(),
                    rank.atHigh());
        }
        return table;
    }

    private static Chart probability(PaybackRange range) {
        double most = 0;
        for (Outcomes each : range.both()) {
            most = Math.max(
                    most,
                    each.simplePayback(Ratio.percent(98)).map(Time::toYears).orElse((double)
                            range.study().model().years()));
        }
        double end = Math.min(Math.max(most, 2.5), range.study().model().years());
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            Outcomes each = range.both().get(i);
            double[] x = new double[STEPS + 1];
            double[] y = new double[STEPS + 1];
            for (int step = 0; step <= STEPS; step++) {
                Work.poll();
                x[step] = end * step / STEPS;
                y[step] = each.probabilityOfPaybackBelow(Time.years(x[step])).toPercent();
            }
            marks.add(Line.through(x, y)
                    .in(i == 0 ? Ink.BLUE : Ink.VERMILION)
                    .broken(i == 0 ? Dash.SOLID : Dash.DASH_DOT)
                    .labelled("against " + each.baseline()));
        }
        marks.add(Reference.standingAt(2, "2 years"));
        return Chart.titled("Probability of a simple payback below a time")
                .across(Axis.of("Time", "years").from(0))
                .panel(Axis.of("Probability", "%").from(0).to(100), marks)
                .build();
    }

    private static Chart tornado(List<DriverRank> ranks, Outcomes against) {
        double mean = against.meanNetPresentValue().amount();
        Bars bars = Bars.of(ranks.stream().map(rank -> rank.driver().words()).toList())
                .with(
                        "in the tenth where it is lowest",
                        Ink.SKY,
                        values(ranks, rank -> rank.atLow().amount() - mean))
                .with(
                        "in the tenth where it is highest",
                        Ink.ORANGE,
                        values(ranks, rank -> rank.atHigh().amount() - mean));
        return Chart.titled("What drives the present value against " + against.baseline())
                .across(Axis.of(
                        "Mean present value, beyond that of all draws",
                        against.meanNetPresentValue().currency()))
                .bars(bars)
                .caption("The mean of all draws is " + against.meanNetPresentValue() + ".")
                .build();
    }

    private static List<Double> values(List<DriverRank> ranks, ToDoubleFunction<DriverRank> value) {
        return ranks.stream().map(value::applyAsDouble).toList();
    }
}

package headrace.report.money;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Reference;
import headrace.data.Column;
import headrace.data.Table;
import headrace.economics.Appraisal;
import headrace.economics.Carbon;
import headrace.economics.CashFlow;
import headrace.economics.InternalRates;
import headrace.economics.LawAppraisals;
import headrace.economics.Realisation;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.units.Money;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How paybacks and cash flows show themselves. */
public final class AppraisalReports {
    private static final List<Ink> INKS = List.of(Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.PURPLE, Ink.BLACK);

    private AppraisalReports() {}

    /** Shows which share of a saving is counted, and why. */
    public static Shown realisation(Realisation realisation) {
        Table table = Table.of("Reasons", Column.text("reason"), Column.of("keeps", Ratio.KIND))
                .rows(realisation.reasons().stream()
                        .map(reason -> new Object[] {reason.why(), reason.kept()})
                        .toList());
        Composed shown =
                Composed.titled("Realisation: " + realisation.share() + " of the calculated saving is counted");
        return realisation.reasons().isEmpty()
                ? shown.shown()
                : shown.table(table).shown();
    }

    /** Shows an appraisal. */
    public static Shown appraisal(Appraisal appraisal) {
        return Composed.titled("Payback: " + appraisal.name())
                .line(verdict(appraisal))
                .fact("outlay", appraisal.outlay())
                .fact("saving of year 1 as calculated", appraisal.saving())
                .fact("net present value", appraisal.netPresentValue())
                .fact("internal rate", appraisal.internalRates())
                .fact(
                        "saving to investment",
                        Numbers.print(appraisal.savingToInvestment().value()))
                .fact("adjusted rate", appraisal.adjustedRate())
                .table(years(appraisal.flow(), appraisal.terms().discounting().nominal()))
                .chart(running("Cash flow", List.of(appraisal)))
                .shown(appraisal, ESTIMATE);
    }

    private static final String ESTIMATE =
            "An engineering estimate: prices, hours and first costs are as good as what was stated";

    private static String verdict(Appraisal appraisal) {
        return "Simple payback: " + years(appraisal.simplePayback()) + "; discounted: "
                + years(appraisal.discountedPayback()) + "; worth " + appraisal.netPresentValue() + " over "
                + appraisal.terms().years() + " years.";
    }

    static String years(Optional<Time> time) {
        return time.map(each -> Numbers.print(each.toYears()) + " years").orElse("never");
    }

    /** Shows what laws are worth against both baselines. */
    public static Shown laws(LawAppraisals laws) {
        String currency = laws.each().get(0).saving().currency();
        Table table = Table.of(
                "Paybacks against both baselines",
                Column.text("law and baseline"),
                Column.in("outlay", currency),
                Column.in("saving of year 1", currency),
                Column.in("simple payback", "a"),
                Column.in("discounted payback", "a"),
                Column.in("net present value", currency),
                Column.text("internal rate"),
                Column.number("saving to investment"));
        for (Appraisal each : laws.each()) {
            table = table.row(
                    each.name(),
                    each.outlay(),
                    each.saving(),
                    each.simplePayback().orElse(null),
                    each.discountedPayback().orElse(null),
                    each.netPresentValue(),
                    each.internalRates().toString(),
                    each.savingToInvestment().value());
        }
        Composed shown = Composed.titled("Paybacks of " + laws.all().size() + " control laws against both baselines");
        laws.all()
                .forEach(law -> shown.line("'" + law.law() + "': simple payback "
                        + years(law.againstConstantSpeed().simplePayback())
                        + " against throttling at constant speed, "
                        + years(law.againstFixedSpeed().simplePayback()) + " against fixed design speed."));
        return shown.table(table)
                .chart(running("Discounted cash flow, added up", laws.each()))
                .shown(laws, ESTIMATE);
    }

    /** Shows a cash flow. */
    public static Shown flow(CashFlow flow) {
        List<Mark> marks = new ArrayList<>();
        marks.add(line(flow, Ratio.ZERO).labelled("added up"));
        marks.add(Reference.atHeight(0, ""));
        return Composed.titled("Cash flow: " + flow)
                .fact("internal rate", flow.internalRates())
                .table(years(flow, Ratio.ZERO))
                .chart(chart("Cash flow", flow.in(0), marks))
                .shown(flow.internalRates().notes());
    }

    /** Shows internal rates. */
    public static Shown rates(InternalRates rates) {
        return Composed.titled("Internal rate: " + rates).shown(rates.notes());
    }

    /** Shows carbon dioxide. */
    public static Shown carbon(Carbon carbon) {
        return Composed.titled("Carbon dioxide of " + carbon.energy() + " a year")
                .fact("in year 1", carbon.firstYear())
                .fact("in " + carbon.years() + " years, grid as it is", carbon.total())
                .fact(
                        "in " + carbon.years() + " years, grid falling by "
                                + carbon.factor().decline() + " a year",
                        carbon.totalWithDecline())
                .shown(carbon);
    }

    private static Table years(CashFlow flow, Ratio rate) {
        String currency = flow.in(0).currency();
        Table table = rate.value() == 0
                ? Table.of(
                        "By year",
                        Column.number("year"),
                        Column.in("amount", currency),
                        Column.in("added up", currency))
                : Table.of(
                        "By year",
                        Column.number("year"),
                        Column.in("amount", currency),
                        Column.in("added up", currency),
                        Column.in("discounted and added up", currency));
        List<Money> plain = flow.running();
        List<Money> discounted = flow.running(rate);
        for (int year = 0; year <= flow.years(); year++) {
            table = rate.value() == 0
                    ? table.row(year, flow.in(year), plain.get(year))
                    : table.row(year, flow.in(year), plain.get(year), discounted.get(year));
        }
        return table;
    }

    private static Chart running(String title, List<Appraisal> appraisals) {
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < appraisals.size(); i++) {
            Appraisal each = appraisals.get(i);
            Ink ink = INKS.get(appraisals.size() == 1 ? 0 : i / 2 % INKS.size());
            marks.add(line(each.flow(), each.terms().discounting().nominal())
                    .in(ink)
                    .broken(i % 2 == 1 ? Dash.DASH_DOT : Dash.SOLID)
                    .labelled(appraisals.size() == 1 ? "discounted" : each.name()));
        }
        if (appraisals.size() == 1) {
            marks.add(line(appraisals.get(0).flow(), Ratio.ZERO).in(Ink.GREY).labelled("without discount"));
        }
        marks.add(Reference.atHeight(0, ""));
        return chart(title, appraisals.get(0).saving(), marks);
    }

    private static Chart chart(String title, Money like, List<Mark> marks) {
        return Chart.titled(title)
                .across(Axis.of("Time", "years").from(0))
                .panel(Axis.of("Money", like.currency()), marks)
                .build();
    }

    private static Line line(CashFlow flow, Ratio rate) {
        double[] x = new double[flow.years() + 1];
        double[] y = new double[flow.years() + 1];
        List<Money> running = flow.running(rate);
        for (int year = 0; year <= flow.years(); year++) {
            x[year] = year;
            y[year] = running.get(year).amount();
        }
        return Line.through(x, y);
    }
}

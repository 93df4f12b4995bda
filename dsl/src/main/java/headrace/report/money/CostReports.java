package headrace.report.money;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.data.Column;
import headrace.data.Table;
import headrace.economics.CostItem;
import headrace.economics.LifeCycleComparison;
import headrace.economics.LifeCycleCost;
import headrace.economics.tariff.Bill;
import headrace.economics.tariff.BilledMonth;
import headrace.economics.tariff.EnergyRate;
import headrace.economics.tariff.PowerSeries;
import headrace.economics.tariff.Tariff;
import headrace.report.Composed;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.units.Energy;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** How life-cycle costs, tariffs and bills show themselves. */
public final class CostReports {
    private static final List<Ink> INKS =
            List.of(Ink.GREY, Ink.SKY, Ink.ORANGE, Ink.GREEN, Ink.PURPLE, Ink.BLUE, Ink.VERMILION);

    private static final int MOST_POINTS = 400;

    private CostReports() {}

    /** Shows a life-cycle cost. */
    public static Shown lifeCycle(LifeCycleCost cost) {
        Composed shown = Composed.titled("Life-cycle cost: " + cost).table(items(cost));
        return cost.items().isEmpty()
                ? shown.shown(cost)
                : shown.chart(bars(List.of(cost))).shown(cost);
    }

    private static Table items(LifeCycleCost cost) {
        String currency = cost.presentValue().currency();
        Table table = Table.of(
                "Costs of " + cost.name(),
                Column.text("cost"),
                Column.text("when"),
                Column.in("at today's price", currency),
                Column.in("present value", currency));
        for (CostItem item : cost.items()) {
            table = table.row(item.name(), item.when(), item.today(), cost.presentValue(item));
        }
        return table.row("together", "", null, cost.presentValue());
    }

    /** Shows life-cycle costs side by side. */
    public static Shown comparison(LifeCycleComparison comparison) {
        LifeCycleCost least = comparison.least();
        String currency = least.presentValue().currency();
        Table table = Table.of(
                "Life-cycle costs",
                Column.text("choice"),
                Column.in("at once", currency),
                Column.in("present value of all", currency),
                Column.in("a year", currency),
                Column.in("saved against the first", currency),
                Column.number("saving to investment"));
        Composed shown = Composed.titled("Life-cycle costs over " + least.years() + " years")
                .line("'" + least.name() + "' costs least: " + least.presentValue() + " at present value, "
                        + comparison.saved(least) + " less than '"
                        + comparison.all().get(0).name() + "'.");
        for (LifeCycleCost cost : comparison.all()) {
            table = table.row(
                    cost.name(),
                    cost.flow().in(0).times(-1),
                    cost.presentValue(),
                    cost.yearly(),
                    comparison.saved(cost),
                    comparison
                            .savingToInvestment(cost)
                            .map(ratio -> ratio.value())
                            .orElse(null));
        }
        shown.table(table).chart(bars(comparison));
        comparison.all().forEach(cost -> shown.table(items(cost)));
        return shown.shown(comparison);
    }

    private static Chart bars(LifeCycleComparison comparison) {
        return bars(comparison.all());
    }

    private static Chart bars(List<LifeCycleCost> all) {
        List<String> kinds = all.stream()
                .flatMap(cost -> cost.items().stream())
                .map(CostItem::name)
                .distinct()
                .toList();
        Bars bars = Bars.of(all.stream().map(LifeCycleCost::name).toList());
        for (int i = 0; i < kinds.size(); i++) {
            String kind = kinds.get(i);
            List<Double> values = new ArrayList<>();
            for (LifeCycleCost cost : all) {
                values.add(cost.items().stream()
                        .filter(item -> item.name().equals(kind))
                        .mapToDouble(item -> cost.presentValue(item).amount())
                        .sum());
            }
            bars = bars.with(kind, INKS.get(i % INKS.size()), values);
        }
        String currency = all.get(0).presentValue().currency();
        return Chart.titled("Present value of all costs")
                .across(Axis.of("Present value", currency))
                .bars(bars.asStacked())
                .build();
    }

    /** Shows one cost. */
    public static Shown item(CostItem item) {
        Composed shown = Composed.titled("Cost: " + item.name())
                .fact("at today's price", item.today())
                .fact("paid", item.when());
        if (item.escalation().si() != 0) {
            shown.fact("rises beyond inflation", item.escalation() + " a year");
        }
        return shown.shown();
    }

    /** Shows costs that no life-cycle cost holds yet, a row each. */
    public static Shown items(List<CostItem> items) {
        Table table = Table.of(
                        "Costs",
                        Column.text("cost"),
                        Column.text("at today's price"),
                        Column.text("paid"),
                        Column.of("rises beyond inflation", Ratio.KIND))
                .rows(items.stream()
                        .map(item ->
                                new Object[] {item.name(), item.today().toString(), item.when(), item.escalation()})
                        .toList());
        return Composed.titled("Costs").table(table).shown();
    }

    /** Shows a price of energy. */
    public static Shown rate(EnergyRate rate) {
        return Composed.titled("Rate: " + rate.name()).line(rate + ".").shown();
    }

    /** Shows prices of energy that no tariff holds yet. */
    public static Shown rates(List<EnergyRate> rates) {
        Composed shown = Composed.titled("Rates");
        rates.forEach(rate -> shown.line(rate + "."));
        return shown.shown();
    }

    /** Shows a tariff. */
    public static Shown tariff(Tariff tariff) {
        Composed shown = Composed.titled("Tariff: " + tariff.name());
        tariff.rates().forEach(rate -> shown.fact("rate", rate));
        return shown.fact("demand", tariff.demand())
                .fact("fixed each month", tariff.fixed())
                .shown(tariff.notes());
    }

    /** Shows a year of powers. */
    public static Shown powers(PowerSeries powers) {
        return Composed.titled("Powers of a year: " + powers)
                .fact("intervals", powers.size() + " of " + powers.interval())
                .fact("energy", powers.energy())
                .fact("highest mean", powers.greatest())
                .chart(duration(powers))
                .shown(powers);
    }

    /** Returns for how long in the year which power is taken or more. */
    private static Chart duration(PowerSeries powers) {
        Ruler power = Ruler.of(Power.KIND);
        double[] sorted = IntStream.range(0, powers.size())
                .mapToDouble(i -> power.on(powers.power(i).si()))
                .sorted()
                .toArray();
        int points = Math.min(sorted.length, MOST_POINTS);
        double[] hours = new double[points];
        double[] values = new double[points];
        for (int i = 0; i < points; i++) {
            int at = (int) Math.round((double) i * (sorted.length - 1) / Math.max(1, points - 1));
            hours[i] = (at + 1) * powers.interval().toHours();
            values[i] = sorted[sorted.length - 1 - at];
        }
        return Chart.titled("Hours at or above each power")
                .across(Axis.of("Time", "h").from(0))
                .panel(power.axis("Power").from(0), Line.through(hours, values))
                .build();
    }

    /** Shows a bill. */
    public static Shown bill(Bill bill) {
        String currency = bill.total().currency();
        Table table = Table.of(
                "By month",
                Column.text("month"),
                Column.of("energy", Energy.KIND),
                Column.in("energy cost", currency),
                Column.of("highest demand", Power.KIND),
                Column.of("billed demand", Power.KIND),
                Column.in("demand cost", currency),
                Column.in("fixed", currency),
                Column.in("total", currency));
        for (BilledMonth month : bill.months()) {
            table = table.row(
                    name(month.month()),
                    month.energy(),
                    month.energyCost(),
                    month.demand().highest(),
                    month.demand().billed(),
                    month.demand().cost(),
                    month.fixed(),
                    month.total());
        }
        return Composed.titled(
                        "Bill: " + bill.powers() + " under " + bill.tariff().name())
                .line("The year costs " + bill.total() + " for " + bill.energy() + ": energy " + bill.energyCost()
                        + ", demand " + bill.demandCost() + ", fixed " + bill.fixed() + ".")
                .line("Only the energy goes with the kWh: " + Numbers.print(share(bill)) + " % of the bill.")
                .table(table)
                .chart(months(bill))
                .shown(bill);
    }

    private static double share(Bill bill) {
        double total = bill.total().amount();
        return total == 0 ? 0 : 100 * bill.energyCost().amount() / total;
    }

    private static Chart months(Bill bill) {
        Bars bars = Bars.of(
                        bill.months().stream().map(month -> name(month.month())).toList())
                .with(
                        "energy",
                        Ink.SKY,
                        bill.months().stream()
                                .map(month -> month.energyCost().amount())
                                .toList())
                .with(
                        "demand",
                        Ink.ORANGE,
                        bill.months().stream()
                                .map(month -> month.demand().cost().amount())
                                .toList())
                .with(
                        "fixed",
                        Ink.GREY,
                        bill.months().stream()
                                .map(month -> month.fixed().amount())
                                .toList());
        return Chart.titled("The bill by month")
                .across(Axis.of("Cost", bill.total().currency()))
                .bars(bars.asStacked())
                .build();
    }

    private static String name(Month month) {
        return month.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }
}

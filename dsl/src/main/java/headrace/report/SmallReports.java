package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.curve.Duty;
import headrace.data.Column;
import headrace.data.Table;
import headrace.estimate.MapFactors;
import headrace.estimate.PowerMap;
import headrace.estimate.Reading;
import headrace.operation.limit.OperatingRegion;
import headrace.trend.OutdoorYear;
import headrace.units.Density;
import headrace.units.Flow;
import headrace.units.Gravity;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** How what is handed to a calculation shows itself: a duty, a reading, a region, a map, temperatures of a year. */
final class SmallReports {
    private static final Density WATER = Density.kilogramsPerCubicMetre(1000);
    private static final double[] SPEEDS = {1, 0.75, 0.5};

    private SmallReports() {}

    static Shown duty(Duty duty) {
        double watts =
                WATER.si() * Gravity.STANDARD * duty.flow().si() * duty.head().si();
        return Composed.titled("Duty: " + duty)
                .fact("flow", duty.flow())
                .fact("head", duty.head())
                .fact("hydraulic power in water of " + WATER, Power.watts(watts))
                .shown();
    }

    static Shown reading(Reading reading) {
        return Composed.titled("Reading: " + reading)
                .fact("wire power", reading.power())
                .fact("torque at the shaft", reading.torque())
                .fact("head", reading.head())
                .fact("speed", reading.speed())
                .shown();
    }

    static Shown region(OperatingRegion region) {
        return Composed.titled("Operating region, in shares of best-efficiency flow")
                .fact("preferred", region.preferredFrom() + " to " + region.preferredTo())
                .fact("allowable", region.allowableFrom() + " to " + region.allowableTo())
                .fact("stated", region.stated() ? "yes" : "no, assumed")
                .shown(region.notes());
    }

    /** Shows what an estimate reads backwards, at a few of its speeds. */
    static Shown map(PowerMap map) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        Ruler power = Ruler.of(Power.KIND);
        List<Mark> powers = new ArrayList<>();
        List<Mark> heads = new ArrayList<>();
        for (double s : SPEEDS) {
            if (s >= map.slowest() && s <= map.fastest()) {
                String speed = map.speed().times(Ratio.of(s)).toString();
                double low = flow.on(map.lowestFlow(s));
                double high = flow.on(map.highestFlow(s));
                powers.add(Line.of(q -> power.on(map.wireWatts(q * flow.unit().factor(), s)), low, high)
                        .in(Ink.VERMILION)
                        .labelled(speed));
                heads.add(Line.of(q -> head.on(map.headMetres(q * flow.unit().factor(), s)), low, high)
                        .labelled(speed));
            }
        }
        Composed shown = Composed.titled("Map of wire power and head: " + map.name())
                .line(PlainReports.capital(map.toString()) + ".")
                .fact(
                        "speeds",
                        map.speed().times(map.slowest()) + " to " + map.speed().times(map.fastest()))
                .fact("flow of best efficiency at " + map.speed(), map.bestFlow())
                .fact("shaft power known apart", map.knowsShaft() ? "yes" : "no");
        if (!map.factors().equals(MapFactors.NONE)) {
            shown.fact("moved", map.factors());
        }
        if (!powers.isEmpty()) {
            shown.chart(Chart.titled("Wire power and head of " + map.name())
                    .across(flow.axis("Flow").from(0))
                    .panel(power.axis("Wire power").from(0), powers)
                    .panel(head.axis("Head").from(0), heads)
                    .build());
        }
        return shown.shown(map);
    }

    static Shown outdoor(OutdoorYear year) {
        List<OutdoorYear.Bin> bins = year.bins().stream()
                .sorted(Comparator.comparing(OutdoorYear.Bin::temperature))
                .toList();
        Ruler hours = new Ruler(Time.KIND.unit("h"));
        return Composed.titled("Outdoor temperatures of a year: " + year)
                .chart(Chart.titled("Hours at each outdoor temperature")
                        .across(hours.axis("Time").from(0))
                        .bars(Bars.of(bins.stream()
                                        .map(bin -> bin.temperature().toString())
                                        .toList())
                                .with(
                                        "",
                                        Ink.SKY,
                                        bins.stream()
                                                .map(bin -> hours.on(bin.hours().si()))
                                                .toList()))
                        .build())
                .table(Table.of("Hours", Column.of("temperature", Temperature.KIND), Column.of("time", Time.KIND))
                        .rows(bins.stream()
                                .map(bin -> new Object[] {bin.temperature(), bin.hours()})
                                .toList()))
                .shown();
    }
}

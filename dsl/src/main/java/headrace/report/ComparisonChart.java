package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.energy.LawYear;
import headrace.energy.StrategyComparison;
import headrace.operation.OperatingPoint;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Control laws side by side: head and wire power over flow, and the energy of the year. */
final class ComparisonChart {
    private static final List<Ink> INKS =
            List.of(Ink.GREY, Ink.BLACK, Ink.VERMILION, Ink.PURPLE, Ink.BLUE, Ink.GREEN, Ink.ORANGE);
    private static final int STEPS = 60;

    private ComparisonChart() {}

    static Chart year(StrategyComparison comparison) {
        Ruler energy = Ruler.of(Energy.KIND);
        List<LawYear> laws = comparison.laws();
        Bars bars = Bars.of(laws.stream().map(year -> year.law().name()).toList())
                .with(
                        "",
                        Ink.SKY,
                        laws.stream()
                                .map(year -> energy.on(year.wireEnergy().si()))
                                .toList());
        return Chart.titled("Energy from the wire in the year")
                .across(energy.axis("Energy").from(0))
                .bars(bars)
                .caption("Losses of motor and drive by the model '"
                        + comparison.set().driveTrain().model().name() + "'.")
                .build();
    }

    static Chart overFlow(StrategyComparison comparison) {
        Ruler head = Ruler.of(Head.KIND);
        Ruler power = Ruler.of(Power.KIND);
        return Chart.titled("Head and wire power over flow")
                .across(Ruler.of(Flow.KIND).axis("Flow").from(0))
                .panel(
                        head.axis("Head").from(0),
                        lines(comparison, head, point -> point.head().si()))
                .panel(
                        power.axis("Wire power").from(0),
                        lines(comparison, power, point -> point.wirePower().si()))
                .caption("Losses of motor and drive by the model '"
                        + comparison.set().driveTrain().model().name() + "'.")
                .build();
    }

    private static List<Line> lines(StrategyComparison comparison, Ruler up, ToDoubleFunction<OperatingPoint> value) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < comparison.laws().size(); i++) {
            LawYear year = comparison.laws().get(i);
            Ink ink = INKS.get(i % INKS.size());
            for (Line line : lines(points(comparison, year), up, value)) {
                boolean first = lines.stream()
                        .noneMatch(other -> other.label().equals(year.law().name()));
                lines.add(line.in(ink)
                        .labelled(first && !line.extended() ? year.law().name() : ""));
            }
        }
        return lines;
    }

    private static List<OperatingPoint> points(StrategyComparison comparison, LawYear year) {
        double design = comparison.design().flow().si();
        List<OperatingPoint> points = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            ComparisonReport.at(comparison, year.law(), Flow.cubicMetresPerSecond(design * i / STEPS))
                    .ifPresent(points::add);
        }
        return points;
    }

    /** Returns the line through the points, dashed where they lie beyond the tested range. */
    private static List<Line> lines(List<OperatingPoint> points, Ruler up, ToDoubleFunction<OperatingPoint> value) {
        Ruler flow = Ruler.of(Flow.KIND);
        List<Line> lines = new ArrayList<>();
        int start = 0;
        for (int end = 1; end < points.size(); end++) {
            boolean tested = points.get(end).point().tested();
            boolean last = end == points.size() - 1;
            if (last || points.get(end + 1).point().tested() != tested) {
                List<OperatingPoint> run = points.subList(start, end + 1);
                lines.add(Line.through(
                                flow.on(run.stream()
                                        .mapToDouble(point -> point.flow().si())
                                        .toArray()),
                                up.on(run.stream().mapToDouble(value).toArray()))
                        .extended(!tested));
                start = end;
            }
        }
        return lines;
    }
}

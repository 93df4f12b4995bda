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
import java.util.Optional;
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
            line(comparison, year, up, value)
                    .ifPresent(
                            line -> lines.add(line.in(ink).labelled(year.law().name())));
        }
        return lines;
    }

    private static Optional<Line> line(
            StrategyComparison comparison, LawYear year, Ruler up, ToDoubleFunction<OperatingPoint> value) {
        Ruler flow = Ruler.of(Flow.KIND);
        double design = comparison.design().flow().si();
        List<OperatingPoint> points = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            ComparisonReport.at(comparison, year.law(), Flow.cubicMetresPerSecond(design * i / STEPS))
                    .ifPresent(points::add);
        }
        if (points.size() < 2) {
            return Optional.empty();
        }
        return Optional.of(Line.through(
                flow.on(points.stream().mapToDouble(point -> point.flow().si()).toArray()),
                up.on(points.stream().mapToDouble(value).toArray())));
    }
}

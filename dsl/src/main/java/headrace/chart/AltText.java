package headrace.chart;

import headrace.chart.mark.Area;
import headrace.chart.mark.Bars;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Diagram;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.units.Numbers;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Says in words what a chart shows. */
final class AltText {
    private AltText() {}

    static String of(Chart chart) {
        List<String> sentences = new ArrayList<>();
        if (!chart.title().isBlank()) {
            sentences.add(chart.title());
        }
        if (chart.diagram().isPresent()) {
            for (Diagram.Rung rung : chart.diagram().get().rungs()) {
                sentences.add(rung.title() + (rung.detail().isBlank() ? "" : ": " + rung.detail()));
            }
        } else if (chart.bars().isPresent()) {
            bars(chart.bars().get(), chart.across(), sentences);
        } else {
            Extent across = Extent.of(chart.panels(), true).on(chart.across());
            for (Chart.Panel panel : chart.panels()) {
                Extent up = Extent.of(List.of(panel), false).on(panel.up());
                sentences.add(axis(panel.up(), up) + " against " + axis(chart.across(), across) + ": " + marks(panel));
            }
        }
        if (!chart.caption().isBlank()) {
            sentences.add(chart.caption());
        }
        return String.join(" ", sentences.stream().map(AltText::ended).toList());
    }

    private static String axis(Axis axis, Extent extent) {
        return axis.title() + " (" + Numbers.print(extent.low()) + " to " + Numbers.print(extent.high()) + ")";
    }

    private static String marks(Chart.Panel panel) {
        Set<String> words = new LinkedHashSet<>();
        for (Mark mark : panel.marks()) {
            words.add(mark(mark));
        }
        return words.isEmpty() ? "nothing" : String.join("; ", words);
    }

    private static String mark(Mark mark) {
        String name = mark.label().isBlank() ? "" : " " + mark.label();
        if (mark instanceof Line line) {
            return (line.extended() ? "line continued beyond its data" : "line") + name;
        }
        if (mark instanceof Points points) {
            return points.track().size() == 1
                    ? "point" + name + " at " + Numbers.print(points.track().x(0)) + ", "
                            + Numbers.print(points.track().y(0))
                    : points.track().size() + " points" + name;
        }
        if (mark instanceof Area area) {
            return (area.hatched() ? "hatched area" : "area") + name;
        }
        if (mark instanceof Reference reference) {
            return "reference" + name + " at " + Numbers.print(reference.value());
        }
        Set<String> values = new LinkedHashSet<>();
        ((ContourLines) mark).lines().forEach(level -> values.add(level.text()));
        return "contours" + name + " at " + String.join(", ", values);
    }

    private static void bars(Bars bars, Axis axis, List<String> sentences) {
        for (int i = 0; i < bars.names().size(); i++) {
            List<String> values = new ArrayList<>();
            for (Bars.Series series : bars.series()) {
                String label = series.label().isBlank() ? "" : series.label() + " ";
                values.add(label + Numbers.print(series.values().get(i)) + " " + axis.unit());
            }
            sentences.add(bars.names().get(i) + ": " + String.join(", ", values).strip());
        }
    }

    private static String ended(String sentence) {
        return sentence.endsWith(".") || sentence.endsWith("?") || sentence.endsWith("!") ? sentence : sentence + ".";
    }
}

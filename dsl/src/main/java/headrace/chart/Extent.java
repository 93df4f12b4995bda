package headrace.chart;

import headrace.chart.mark.Area;
import headrace.chart.mark.Bars;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.paint.Track;
import java.util.ArrayList;
import java.util.List;

/**
 * How far the values drawn along an axis reach.
 *
 * @param low the least
 * @param high the greatest
 */
record Extent(double low, double high) {
    /** Returns the extent of everything in some panels; from 0 to 1 if there is nothing. */
    static Extent of(List<Chart.Panel> panels, boolean across) {
        List<Double> values = new ArrayList<>();
        for (Chart.Panel panel : panels) {
            for (Mark mark : panel.marks()) {
                if (mark instanceof Reference reference && reference.upright() == across) {
                    values.add(reference.value());
                }
                for (Track track : tracks(mark)) {
                    for (int i = 0; i < track.size(); i++) {
                        values.add(across ? track.x(i) : track.y(i));
                    }
                }
            }
        }
        return values.isEmpty() ? new Extent(0, 1) : of(values);
    }

    /** Returns the extent of some bars and of 0, where they begin. */
    static Extent of(Bars bars) {
        List<Double> values = new ArrayList<>(List.of(0.0));
        for (int i = 0; i < bars.names().size(); i++) {
            double sum = 0;
            for (Bars.Series series : bars.series()) {
                double value = series.values().get(i);
                sum = bars.stacked() ? sum + value : value;
                values.add(sum);
            }
        }
        return of(values);
    }

    /** Returns this extent with the ends that an axis fixes. */
    Extent on(Axis axis) {
        return new Extent(axis.from().orElse(low), axis.to().orElse(high));
    }

    private static Extent of(List<Double> values) {
        return new Extent(
                values.stream().mapToDouble(v -> v).min().orElseThrow(),
                values.stream().mapToDouble(v -> v).max().orElseThrow());
    }

    private static List<Track> tracks(Mark mark) {
        if (mark instanceof Line line) {
            return List.of(line.track());
        }
        if (mark instanceof Points points) {
            return List.of(points.track());
        }
        if (mark instanceof Area area) {
            return List.of(area.upper(), area.lower());
        }
        return mark instanceof ContourLines contours
                ? contours.lines().stream().map(ContourLines.Level::track).toList()
                : List.of();
    }
}

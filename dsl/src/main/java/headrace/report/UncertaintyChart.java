package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.paint.Track;
import headrace.estimate.FlowEstimator;
import headrace.estimate.PowerMap;
import headrace.estimate.Spread;
import headrace.estimate.UncertaintyMap;
import headrace.numeric.Contour;
import headrace.numeric.Contours;
import headrace.numeric.Grid;
import headrace.units.Flow;
import headrace.units.Numbers;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;

/** Lines of equal uncertainty over flow and speed, with blind and ambiguous zones hatched. */
final class UncertaintyChart {
    private static final double[] LEVELS = {0.005, 0.01, 0.02, 0.03, 0.05, 0.08};
    private static final int CELLS = 72;
    private static final double ROUND = 100;

    /** Looks into a cell of a row. */
    private interface Zone {
        boolean has(int row, int column);
    }

    private final UncertaintyMap uncertain;
    private final PowerMap map;
    private final Ruler flow = Ruler.of(Flow.KIND);
    private final Ruler speed = Ruler.of(Speed.KIND);

    private UncertaintyChart(UncertaintyMap uncertain) {
        this.uncertain = uncertain;
        this.map = uncertain.estimator().map();
    }

    static Chart of(UncertaintyMap uncertain) {
        return new UncertaintyChart(uncertain).chart();
    }

    private Chart chart() {
        List<Mark> marks = new ArrayList<>();
        List<Mark> twice = zones(uncertain::ambiguous, Ink.ORANGE, "two flows");
        for (Mark mark : twice) {
            Area hatched = (Area) mark;
            marks.add(new Area(hatched.upper(), hatched.lower(), Ink.ORANGE, false, ""));
        }
        marks.addAll(twice);
        marks.addAll(zones(uncertain::blind, Ink.GREY, "blind"));
        marks.add(contours());
        marks.add(edge());
        FlowEstimator estimator = uncertain.estimator();
        return Chart.titled("How sure a flow of " + map.name() + " is, from " + uncertain.method())
                .across(flow.axis("Flow").from(0))
                .panel(speed.axis("Speed").from(ROUND * Math.floor(rpm(map.slowest()) / ROUND)), marks)
                .caption("Lines: expanded uncertainty, k = 2, in % of design flow " + estimator.design()
                        + ". Blind: standard uncertainty beyond 5 % of " + map.bestFlow() + ".")
                .build();
    }

    private double rpm(double s) {
        return speed.on(s * map.speed().si());
    }

    private Mark contours() {
        FlowEstimator estimator = uncertain.estimator();
        double design = estimator.design().si();
        Grid grid = new Grid(0.004, 0.996, map.slowest(), map.fastest(), CELLS);
        ContourLines lines = ContourLines.of("uncertainty");
        for (Contour contour : Contours.of(
                (place, s) -> Spread.COVERAGE * estimator.flowUncertainty(uncertain.method(), at(place, s), s) / design,
                grid,
                LEVELS)) {
            Contour moved = contour.moved((place, s) -> flow.on(at(place, s)), (place, s) -> rpm(s));
            lines = lines.with(moved, Numbers.print(100 * contour.level()) + " %");
        }
        return lines;
    }

    private double at(double place, double s) {
        double low = map.lowestFlow(s);
        return low + place * (map.highestFlow(s) - low);
    }

    private Mark edge() {
        int n = 40;
        double[] x = new double[n + 1];
        double[] y = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            double s = map.slowest() + (map.fastest() - map.slowest()) * i / n;
            x[i] = flow.on(map.highestFlow(s));
            y[i] = rpm(s);
        }
        return Line.through(x, y).in(Ink.BLACK).labelled("end of map");
    }

    /** A strip of cells that hang together from row to row; where it splits or joins, another begins. */
    private List<Mark> zones(Zone zone, Ink ink, String label) {
        List<Mark> marks = new ArrayList<>();
        List<List<double[]>> open = new ArrayList<>();
        for (int i = 0; i < uncertain.rows(); i++) {
            List<double[]> stretches = stretches(zone, i);
            List<List<double[]>> next = new ArrayList<>();
            for (double[] stretch : stretches) {
                List<List<double[]>> touched = open.stream()
                        .filter(strip -> touches(strip.get(strip.size() - 1), stretch))
                        .toList();
                long alsoTouched = touched.size() != 1
                        ? 0
                        : stretches.stream()
                                .filter(other -> touches(last(touched.get(0)), other))
                                .count();
                List<double[]> strip = alsoTouched == 1 ? touched.get(0) : new ArrayList<>();
                if (strip.isEmpty() && touched.size() == 1) {
                    strip.add(new double[] {stretch[0], stretch[1], last(touched.get(0))[2]});
                }
                strip.add(stretch);
                next.add(strip);
            }
            open.stream().filter(strip -> !next.contains(strip)).forEach(strip -> close(strip, ink, label, marks));
            open = next;
        }
        for (List<double[]> strip : open) {
            close(strip, ink, label, marks);
        }
        return marks;
    }

    private static double[] last(List<double[]> strip) {
        return strip.get(strip.size() - 1);
    }

    private static boolean touches(double[] one, double[] other) {
        return one[0] < other[1] && other[0] < one[1];
    }

    private void close(List<double[]> strip, Ink ink, String label, List<Mark> marks) {
        if (strip.size() < 2) {
            return;
        }
        double[] left = strip.stream().mapToDouble(p -> p[0]).toArray();
        double[] right = strip.stream().mapToDouble(p -> p[1]).toArray();
        double[] up = strip.stream().mapToDouble(p -> p[2]).toArray();
        String once = marks.isEmpty() ? label : "";
        marks.add(new Area(Track.through(right, up), Track.through(left, up), ink, true, once));
    }

    /** Returns the stretches of a row: from, to, and the height. */
    private List<double[]> stretches(Zone zone, int row) {
        List<double[]> found = new ArrayList<>();
        double height = rpm(uncertain.speed(row));
        double most = flow.on(map.highestFlow(uncertain.speed(row)));
        int columns = uncertain.columns();
        int from = -1;
        for (int j = 0; j <= columns; j++) {
            boolean inside = j < columns && zone.has(row, j);
            if (inside && from < 0) {
                from = j;
            } else if (!inside && from >= 0) {
                boolean toEnd = j == columns || !uncertain.covers(row, j);
                found.add(new double[] {edge(from), toEnd ? most : edge(j), height});
                from = -1;
            }
        }
        return found;
    }

    private double edge(int column) {
        return column == 0 ? 0 : flow.on(0.5 * (uncertain.flow(column - 1) + uncertain.flow(column)));
    }
}

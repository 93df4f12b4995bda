package headrace.chart;

import headrace.chart.mark.Area;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.mark.Symbol;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Charts as crowded as those of real pumps, drawn from a seed: speeds, islands, duties, long names. */
final class PumpLikeChart {
    private static final double[] SPEEDS = {1, 0.9, 0.8, 0.7, 0.6};

    private final SplittableRandom random;
    private final double shutOff;
    private final double runOut;
    private final double headAtRunOut;
    private final List<String> labels = new ArrayList<>();
    private final Chart chart;

    PumpLikeChart(long seed) {
        random = new SplittableRandom(seed);
        shutOff = between(6, 90);
        runOut = between(8, 900);
        headAtRunOut = shutOff * between(0.2, 0.75);
        chart = draw();
    }

    /** Returns every label and contour value that the chart must show somewhere. */
    List<String> labels() {
        return labels;
    }

    Chart chart() {
        return chart;
    }

    private Chart draw() {
        Chart.Draft draft = Chart.titled(
                        random.nextInt(3) == 0
                                ? "P-A, drawn over speed for the library of an invented town with a rather long name"
                                : "P-A over speed")
                .across(Axis.of("Flow", "m³/h").from(0))
                .panel(Axis.of("Head", "m").from(0), heads());
        if (random.nextInt(3) == 0) {
            draft.panel(Axis.of("Shaft power", "kW").from(0), powers());
        }
        return draft.caption("Speed changes efficiency by the correlation of 1998, applied at best efficiency.")
                .build();
    }

    private List<Mark> heads() {
        List<Mark> marks = new ArrayList<>();
        if (random.nextBoolean()) {
            double[] q = {0.2 * runOut, 0.5 * runOut, 0.9 * runOut};
            double[] low = {0.1 * shutOff, 0.15 * shutOff, 0.2 * shutOff};
            double[] high = {0.3 * shutOff, 0.4 * shutOff, 0.6 * shutOff};
            marks.add(Area.between(q, low, high).labelled(named("band of heads that the branches need")));
        }
        marks.add(Area.rectangle(0, 0.1 * runOut, 0, shutOff).asHatched().labelled(named("below minimum flow")));
        for (double s : SPEEDS) {
            marks.add(Line.of(q -> head(q, s), 0, s * runOut).labelled(named(Math.round(100 * s) + " %")));
        }
        marks.add(Line.of(q -> head(q, 1), runOut, 1.1 * runOut).extended(true));
        marks.add(islands());
        double fixed = shutOff * between(0, 0.3);
        double share = between(0.4, 0.7);
        double top = Math.max(head(share * runOut, 1), fixed) - fixed;
        marks.add(Line.of(q -> fixed + top * q * q / (share * share * runOut * runOut), 0, 1.05 * share * runOut)
                .in(Ink.BLACK)
                .broken(Dash.DASH_DOT)
                .labelled(named("system curve with " + Math.round(fixed) + " m static head")));
        marks.add(Line.of(q -> fixed + top * (0.35 + 0.65 * q / (share * runOut)), 0, share * runOut)
                .in(Ink.VERMILION)
                .labelled(named("linear control, minimum head 35 %")));
        marks.add(Reference.atHeight(0.9 * shutOff, named("pressure rating of the circuit")));
        for (double load : new double[] {1, 0.75, 0.5, 0.25}) {
            double q = load * share * runOut;
            marks.add(Points.at(q, fixed + top * (0.35 + 0.65 * load))
                    .in(Ink.VERMILION)
                    .as(load == 1 ? Symbol.DIAMOND : Symbol.CIRCLE)
                    .labelled(named(
                            load == 1 ? "design point of the whole building" : Math.round(load * 100) + " % load")));
        }
        return marks;
    }

    private ContourLines islands() {
        ContourLines islands = ContourLines.of(named("pump efficiency"));
        for (int i = 0; i < 5; i++) {
            int points = 120;
            double[] x = new double[points + 1];
            double[] y = new double[points + 1];
            double size = 0.08 + 0.09 * i;
            for (int j = 0; j <= points; j++) {
                double angle = 2 * Math.PI * j / points;
                double s = 0.8 + 0.7 * size * Math.sin(angle);
                double q = s * runOut * (0.62 + size * Math.cos(angle) * 0.8);
                x[j] = q;
                y[j] = head(q, s);
            }
            islands = islands.with(x, y, named(78 - 4 * i + " %"));
        }
        return islands;
    }

    private List<Mark> powers() {
        List<Mark> marks = new ArrayList<>();
        double most = shutOff * runOut / 200;
        for (double s : SPEEDS) {
            marks.add(Line.of(q -> most * s * s * s * (0.4 + 0.6 * q / (s * runOut)), 0, s * runOut)
                    .in(Ink.PURPLE)
                    .labelled(named(Math.round(100 * s) + " % speed")));
        }
        marks.add(Reference.atHeight(0.95 * most, named("motor rating")));
        return marks;
    }

    private double head(double flow, double speed) {
        double q = flow / (speed * runOut);
        return speed * speed * (shutOff - (shutOff - headAtRunOut) * q * q);
    }

    private String named(String label) {
        labels.add(label);
        return label;
    }

    private double between(double low, double high) {
        return random.nextDouble(low, high);
    }
}

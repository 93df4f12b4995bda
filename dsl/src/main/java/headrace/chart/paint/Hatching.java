package headrace.chart.paint;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Slanting lines over a shape: for areas that must be told apart without colour. */
public final class Hatching {
    private Hatching() {}

    /**
     * Returns lines rising to the right at 45° over a shape made of straight edges.
     *
     * @param shape what to hatch
     * @param spacing between lines, measured across, in pixels
     */
    public static List<Track> over(Shape shape, double spacing) {
        List<double[]> edges = edges(shape);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double[] edge : edges) {
            least = Math.min(least, Math.min(edge[0] + edge[1], edge[2] + edge[3]));
            most = Math.max(most, Math.max(edge[0] + edge[1], edge[2] + edge[3]));
        }
        List<Track> lines = new ArrayList<>();
        for (double sum = Math.ceil(least / spacing) * spacing; sum < most; sum += spacing) {
            List<Double> crossings = crossings(edges, sum);
            for (int i = 0; i + 1 < crossings.size(); i += 2) {
                double from = crossings.get(i);
                double to = crossings.get(i + 1);
                if (to - from > 0.5) {
                    lines.add(Track.through(new double[] {from, to}, new double[] {sum - from, sum - to}));
                }
            }
        }
        return lines;
    }

    /** Returns where the line {@code x + y = sum} enters and leaves, in order across. */
    private static List<Double> crossings(List<double[]> edges, double sum) {
        List<Double> found = new ArrayList<>();
        for (double[] edge : edges) {
            double from = edge[0] + edge[1] - sum;
            double to = edge[2] + edge[3] - sum;
            if (from < 0 != to < 0) {
                found.add(edge[0] + from / (from - to) * (edge[2] - edge[0]));
            }
        }
        Collections.sort(found);
        return found;
    }

    private static List<double[]> edges(Shape shape) {
        List<double[]> edges = new ArrayList<>();
        double[] c = new double[6];
        double[] at = new double[2];
        double[] begun = new double[2];
        for (PathIterator it = shape.getPathIterator(null, 0.1); !it.isDone(); it.next()) {
            int kind = it.currentSegment(c);
            double[] to = kind == PathIterator.SEG_CLOSE ? begun : new double[] {c[0], c[1]};
            if (kind == PathIterator.SEG_MOVETO) {
                begun = to;
            } else {
                edges.add(new double[] {at[0], at[1], to[0], to[1]});
            }
            at = to;
        }
        return edges;
    }
}

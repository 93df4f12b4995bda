package headrace.chart;

import headrace.chart.mark.Area;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.mark.Symbol;
import headrace.chart.paint.Track;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/**
 * A mark in pixels, as far as it lies in the frame.
 *
 * @param mark what was asked for
 * @param tracks its lines or its points
 * @param outline of an area, otherwise null
 */
record Drawn(Mark mark, List<Track> tracks, Shape outline) {
    static Drawn of(Mark mark, Scale scale) {
        if (mark instanceof Area area) {
            java.awt.geom.Area shape =
                    new java.awt.geom.Area(polygon(scale.track(area.upper()), scale.track(area.lower())));
            shape.intersect(new java.awt.geom.Area(Plan.rectangle(scale.frame())));
            List<Track> edges = new ArrayList<>(scale.track(area.upper()).within(scale.clip()));
            edges.addAll(scale.track(area.lower()).within(scale.clip()));
            return new Drawn(mark, edges, shape);
        }
        List<Track> tracks = new ArrayList<>();
        if (mark instanceof Line line) {
            tracks.addAll(scale.track(line.track()).within(scale.clip()));
        } else if (mark instanceof ContourLines contours) {
            contours.lines()
                    .forEach(level -> tracks.addAll(scale.track(level.track()).within(scale.clip())));
        } else if (mark instanceof Reference reference) {
            tracks.addAll(across(reference, scale).within(scale.clip()));
        } else if (mark instanceof Points points) {
            Track all = scale.track(points.track());
            for (int i = 0; i < all.size(); i++) {
                tracks.addAll(point(all.x(i), all.y(i)).within(scale.clip()));
            }
        }
        return new Drawn(mark, tracks, null);
    }

    /** Returns how the mark looks apart from its colour: marks of one look need more than a colour in the legend. */
    String look() {
        if (mark instanceof Line line) {
            return "line " + line.dash() + (line.extended() ? " thin" : "");
        }
        if (mark instanceof Points points) {
            return "points " + points.symbol();
        }
        if (mark instanceof Area area) {
            return area.hatched() ? "hatched" : "tinted";
        }
        return mark instanceof Reference ? "line " + Dash.DOTTED : "contours";
    }

    Symbol symbol() {
        return ((Points) mark).symbol();
    }

    private static Track point(double x, double y) {
        return Track.through(new double[] {x}, new double[] {y});
    }

    private static Track across(Reference reference, Scale scale) {
        double value = reference.value();
        double[] both = {value, value};
        return scale.track(
                reference.upright()
                        ? Track.through(
                                both,
                                new double[] {scale.up().from(), scale.up().to()})
                        : Track.through(
                                new double[] {
                                    scale.across().from(), scale.across().to()
                                },
                                both));
    }

    private static Path2D polygon(Track there, Track back) {
        Path2D.Double path = new Path2D.Double(there.toPath());
        for (int i = back.size() - 1; i >= 0; i--) {
            path.lineTo(back.x(i), back.y(i));
        }
        path.closePath();
        return path;
    }
}

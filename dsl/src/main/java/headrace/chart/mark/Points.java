package headrace.chart.mark;

import headrace.chart.paint.Track;

/**
 * Points under one label: test points, or a single operating point.
 *
 * @param track the points, in the units of the axes
 * @param ink the colour
 * @param symbol the shape
 * @param label what they are called, blank for none
 */
public record Points(Track track, Ink ink, Symbol symbol, String label) implements Mark {
    /** Returns these points as black circles. */
    public static Points at(double[] x, double[] y) {
        return new Points(Track.through(x, y), Ink.BLACK, Symbol.CIRCLE, "");
    }

    /** Returns one point as a black circle. */
    public static Points at(double x, double y) {
        return at(new double[] {x}, new double[] {y});
    }

    /** Returns these points with a label. */
    public Points labelled(String text) {
        return new Points(track, ink, symbol, text);
    }

    /** Returns these points in a colour. */
    public Points in(Ink colour) {
        return new Points(track, colour, symbol, label);
    }

    /** Returns these points in a shape. */
    public Points as(Symbol shape) {
        return new Points(track, ink, shape, label);
    }
}

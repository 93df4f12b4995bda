package headrace.chart.mark;

import headrace.chart.paint.Track;
import headrace.numeric.Contour;
import java.util.ArrayList;
import java.util.List;

/**
 * Contours of a map: lines of equal value, each with its value set into it.
 *
 * @param lines the contours, in the units of the axes
 * @param ink the colour
 * @param label what the map is called, blank for none; stands in the legend
 */
public record ContourLines(List<Level> lines, Ink ink, String label) implements Mark {
    /**
     * A piece of a contour.
     *
     * @param track its points; the last is not joined to the first unless it repeats it
     * @param text the value with its unit, as it is set into the line
     */
    public record Level(Track track, String text) {}

    /** Keeps the pieces as they are now. */
    public ContourLines {
        lines = List.copyOf(lines);
    }

    /** Returns a map without contours yet. */
    public static ContourLines of(String label) {
        return new ContourLines(List.of(), Ink.GREEN, label);
    }

    /** Returns these contours and one more, joined to its beginning only if it is closed. */
    public ContourLines with(Contour contour, String text) {
        int points = contour.size() + (contour.closed() ? 1 : 0);
        double[] x = new double[points];
        double[] y = new double[points];
        for (int i = 0; i < points; i++) {
            x[i] = contour.x(i % contour.size());
            y[i] = contour.y(i % contour.size());
        }
        return with(x, y, text);
    }

    /** Returns these contours and one more piece. */
    public ContourLines with(double[] x, double[] y, String text) {
        List<Level> more = new ArrayList<>(lines);
        more.add(new Level(Track.through(x, y), text));
        return new ContourLines(more, ink, label);
    }

    /** Returns these contours in a colour. */
    public ContourLines in(Ink colour) {
        return new ContourLines(lines, colour, label);
    }
}

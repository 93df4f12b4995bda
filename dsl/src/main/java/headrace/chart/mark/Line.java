package headrace.chart.mark;

import headrace.chart.paint.Track;
import java.util.function.DoubleUnaryOperator;

/**
 * A line through points, or the graph of a function.
 *
 * @param track the points in order, in the units of the axes
 * @param ink the colour
 * @param dash how it is broken
 * @param extended whether it goes beyond its data; then it is dashed and thin, and the chart says so
 * @param label what it is called, blank for none
 */
public record Line(Track track, Ink ink, Dash dash, boolean extended, String label) implements Mark {
    private static final int SAMPLES = 120;

    /** Returns the line through these points, blue and solid. */
    public static Line through(double[] x, double[] y) {
        return new Line(Track.through(x, y), Ink.BLUE, Dash.SOLID, false, "");
    }

    /** Returns the graph of a function between two values, both included. */
    public static Line of(DoubleUnaryOperator function, double from, double to) {
        double[] x = new double[SAMPLES + 1];
        double[] y = new double[SAMPLES + 1];
        for (int i = 0; i <= SAMPLES; i++) {
            x[i] = i == SAMPLES ? to : from + (to - from) * i / SAMPLES;
            y[i] = function.applyAsDouble(x[i]);
        }
        return through(x, y);
    }

    /** Returns this line with a label. */
    public Line labelled(String text) {
        return new Line(track, ink, dash, extended, text);
    }

    /** Returns this line in a colour. */
    public Line in(Ink colour) {
        return new Line(track, colour, dash, extended, label);
    }

    /** Returns this line broken so. */
    public Line broken(Dash how) {
        return new Line(track, ink, how, extended, label);
    }

    /** Returns this line marked as going beyond its data. */
    public Line extended(boolean beyond) {
        return new Line(track, ink, beyond ? Dash.DASHED : dash, beyond, label);
    }
}

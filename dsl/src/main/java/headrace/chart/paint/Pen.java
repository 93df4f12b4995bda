package headrace.chart.paint;

import java.util.List;

/**
 * How a line is drawn.
 *
 * @param rgb the colour as {@code 0xRRGGBB}
 * @param width in pixels
 * @param dashes lengths of dash and gap in turn, in pixels; none for an unbroken line
 */
public record Pen(int rgb, double width, List<Double> dashes) {
    /** Keeps the dashes as they are now. */
    public Pen {
        dashes = List.copyOf(dashes);
    }

    /** Returns an unbroken pen. */
    public static Pen solid(int rgb, double width) {
        return new Pen(rgb, width, List.of());
    }
}

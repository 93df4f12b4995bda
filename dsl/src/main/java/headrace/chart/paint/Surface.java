package headrace.chart.paint;

import java.awt.Shape;

/** What a chart is drawn on. Coordinates in pixels from the top left. */
public interface Surface {
    /**
     * Fills a shape.
     *
     * @param shape what to fill
     * @param rgb the colour as {@code 0xRRGGBB}
     * @param opacity from 0 to 1
     */
    void fill(Shape shape, int rgb, double opacity);

    /** Draws along a shape, with round joins and flat ends. */
    void stroke(Shape shape, Pen pen);

    /** Sets a text as filled outlines. */
    void letter(Lettering lettering);
}

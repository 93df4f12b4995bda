package headrace.chart.paint;

import java.awt.geom.Path2D;

/**
 * A line of text on the page.
 *
 * @param text what it says
 * @param face the typeface
 * @param size in pixels
 * @param rgb the colour as {@code 0xRRGGBB}
 * @param x where it begins
 * @param y its base line
 */
public record Lettering(String text, Typeface face, double size, int rgb, double x, double y) {
    /** Returns its outline. */
    public Path2D outline() {
        return face.outline(text, size, x, y);
    }

    /** Returns the box from the tops of capitals and accents to the foot of a {@code g}. */
    public Box box() {
        return new Box(
                x, y - Typeface.ASCENT * size, face.width(text, size), (Typeface.ASCENT + Typeface.DESCENT) * size);
    }
}

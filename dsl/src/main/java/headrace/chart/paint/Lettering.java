package headrace.chart.paint;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

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
    /** Returns this lettering begun at another point. */
    public Lettering at(double newX, double newY) {
        return new Lettering(text, face, size, rgb, newX, newY);
    }

    /** Returns its outline. */
    public Path2D outline() {
        return face.outline(text, size, x, y);
    }

    /** Returns the box around every stroke, at least as high as an ordinary line and as wide as its pen moves. */
    public Box box() {
        Rectangle2D box = new Rectangle2D.Double(
                x, y - Typeface.ASCENT * size, face.width(text, size), (Typeface.ASCENT + Typeface.DESCENT) * size);
        Rectangle2D strokes = outline().getBounds2D();
        if (!strokes.isEmpty()) {
            box.add(strokes);
        }
        return new Box(box.getX(), box.getY(), box.getWidth(), box.getHeight());
    }
}

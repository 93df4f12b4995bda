package headrace.chart.paint;

/**
 * An upright rectangle on the page, in pixels from the top left.
 *
 * @param x the left edge
 * @param y the top edge
 * @param width from left to right
 * @param height from top to bottom
 */
public record Box(double x, double y, double width, double height) {
    /** Returns the right edge. */
    public double right() {
        return x + width;
    }

    /** Returns the bottom edge. */
    public double bottom() {
        return y + height;
    }

    /** Returns the middle across. */
    public double middle() {
        return x + width / 2;
    }

    /** Returns the middle down. */
    public double centre() {
        return y + height / 2;
    }

    /** Returns whether the two share any area. */
    public boolean crosses(Box other) {
        return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
    }

    /** Returns whether the other lies wholly within this one. */
    public boolean holds(Box other) {
        return other.x >= x && other.right() <= right() && other.y >= y && other.bottom() <= bottom();
    }

    /** Returns how far a point is from the box, 0 inside. */
    public double distance(double[] point) {
        double across = Math.max(0, Math.abs(point[0] - middle()) - width / 2);
        double down = Math.max(0, Math.abs(point[1] - centre()) - height / 2);
        return Math.hypot(across, down);
    }

    /** Returns this box with its edges moved outwards. */
    public Box grown(double by) {
        return new Box(x - by, y - by, width + 2 * by, height + 2 * by);
    }
}

package headrace.numeric;

/**
 * A rectangle of the plane divided into equal cells.
 *
 * @param left where it begins across
 * @param right where it ends across, above {@code left}
 * @param bottom where it begins up
 * @param top where it ends up, above {@code bottom}
 * @param cells how many cells it has each way, at least 1
 */
public record Grid(double left, double right, double bottom, double top, int cells) {
    /** Checks what the fields promise. */
    public Grid {
        if (!(left < right && bottom < top && cells >= 1)) {
            throw new IllegalArgumentException("a grid needs a rectangle with an inside and at least one cell");
        }
    }

    /** Returns the corner of that number across, from 0 to {@link #cells}. */
    public double x(int index) {
        return index == cells ? right : left + (right - left) * index / cells;
    }

    /** Returns the corner of that number up, from 0 to {@link #cells}. */
    public double y(int index) {
        return index == cells ? top : bottom + (top - bottom) * index / cells;
    }
}

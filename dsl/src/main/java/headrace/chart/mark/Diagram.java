package headrace.chart.mark;

import java.util.List;

/**
 * A line diagram: uprights at the left and at the right, and rungs between them with signs on them.
 *
 * <p>Rows are counted from the top, columns from the outside inwards. A rung stands in each row.
 *
 * @param rungs the rungs, from the top down
 * @param uprights what connects their ends
 */
public record Diagram(List<Rung> rungs, List<Upright> uprights) {
    /** A sign on a rung. */
    public enum Sign {
        /** A circle with a triangle: something that drives. */
        DRIVE,
        /** A box with a zigzag: something that gives heat or takes it. */
        HEAT,
        /** Two triangles tip to tip: something that throttles. */
        THROTTLE,
        /** The same with a stroke across: something that is set once. */
        SET,
        /** The same with a circle: something that holds a flow. */
        HOLD,
        /** A triangle against a stroke: something that lets pass one way. */
        ONE_WAY,
        /** A box: something that resists. */
        RESIST
    }

    /** One of the two sides. */
    public enum Side {
        /** Where supply stands. */
        LEFT,
        /** Where return stands. */
        RIGHT
    }

    /**
     * A line across.
     *
     * @param left the column at which it begins, at the left; below 0 if it begins in the open
     * @param right the column at which it ends, at the right; below 0 if it ends in the open
     * @param title what stands above it
     * @param detail what stands beneath it
     * @param signs the signs on it, from the left
     * @param ink its colour
     * @param forward whether its arrow points to the right
     */
    public record Rung(int left, int right, String title, String detail, List<Sign> signs, Ink ink, boolean forward) {
        /** Keeps the signs as they are now. */
        public Rung {
            signs = List.copyOf(signs);
        }
    }

    /**
     * A line down one side, which begins beside another.
     *
     * @param side the side
     * @param column where it stands
     * @param fromColumn the column of what it begins at
     * @param fromRow the row in which it begins
     * @param toRow the row in which it ends
     * @param note what stands outside at its end
     */
    public record Upright(Side side, int column, int fromColumn, int fromRow, int toRow, List<String> note) {
        /** Keeps the note as it is now. */
        public Upright {
            note = List.copyOf(note);
        }
    }

    /** Keeps the lists as they are now. */
    public Diagram {
        rungs = List.copyOf(rungs);
        uprights = List.copyOf(uprights);
    }

    /** Returns how many columns a side has. */
    public int columns(Side side) {
        int most = 0;
        for (Rung rung : rungs) {
            most = Math.max(most, 1 + (side == Side.LEFT ? rung.left() : rung.right()));
        }
        for (Upright upright : uprights) {
            if (upright.side() == side) {
                most = Math.max(most, 1 + Math.max(upright.column(), upright.fromColumn()));
            }
        }
        return most;
    }
}

package headrace.chart;

import headrace.chart.paint.Box;
import java.util.List;

/**
 * Where the lettering of a drawn chart stands.
 *
 * @param width of the whole page in pixels
 * @param height of the whole page in pixels
 * @param frames the plotting area of each panel, from the top down
 * @param texts every piece of lettering, a box for each of its lines
 */
public record Layout(double width, double height, List<Box> frames, List<Text> texts) {
    /** What a piece of lettering is for. */
    public enum Role {
        /** The name of the chart. */
        TITLE,
        /** The name and unit of an axis. */
        AXIS_TITLE,
        /** A number at an axis. */
        TICK,
        /** A name beside a bar. */
        BAR_NAME,
        /** A value at the end of a bar. */
        BAR_VALUE,
        /** A label at its line, points or area. */
        LABEL,
        /** A value set into a contour. */
        CONTOUR_LABEL,
        /** A number at something whose label stands in the legend. */
        KEY,
        /** A line of the legend. */
        LEGEND,
        /** A remark beneath the chart. */
        CAPTION
    }

    /**
     * A piece of lettering.
     *
     * @param role what it is for
     * @param text what it says; a long text that is set in several lines has a piece for each
     * @param box where it stands
     */
    public record Text(Role role, String text, Box box) {}

    /** Keeps the lists as they are now. */
    public Layout {
        frames = List.copyOf(frames);
        texts = List.copyOf(texts);
    }
}

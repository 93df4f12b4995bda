package headrace.chart.mark;

import headrace.chart.paint.Track;

/**
 * A straight line across the whole panel at one value.
 *
 * @param value where, in the unit of the axis
 * @param upright whether it stands at a value across; otherwise it lies at a value up
 * @param ink the colour
 * @param label what it is called, blank for none
 */
public record Reference(double value, boolean upright, Ink ink, String label) implements Mark {
    /** Refuses a value that has no place on an axis. */
    public Reference {
        Track.through(new double[] {value}, new double[] {value});
    }

    /** Returns the line that lies at this value of the axis going up. */
    public static Reference atHeight(double value, String label) {
        return new Reference(value, false, Ink.GREY, label);
    }

    /** Returns the line that stands at this value of the axis going across. */
    public static Reference standingAt(double value, String label) {
        return new Reference(value, true, Ink.GREY, label);
    }

    /** Returns this line in a colour. */
    public Reference in(Ink colour) {
        return new Reference(value, upright, colour, label);
    }
}

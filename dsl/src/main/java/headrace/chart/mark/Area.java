package headrace.chart.mark;

import headrace.chart.paint.Track;

/**
 * The area between two lines, tinted, or hatched where something must not be or is not known.
 *
 * @param upper one edge, in the units of the axes
 * @param lower the other edge, running the same way
 * @param ink the colour
 * @param hatched whether it is hatched instead of tinted
 * @param label what it is called, blank for none
 */
public record Area(Track upper, Track lower, Ink ink, boolean hatched, String label) implements Mark {
    /** Returns the area between two lines over the same values across, tinted sky blue. */
    public static Area between(double[] x, double[] lower, double[] upper) {
        return new Area(Track.through(x, upper), Track.through(x, lower), Ink.SKY, false, "");
    }

    /** Returns the upright strip between two values across and two values up. */
    public static Area rectangle(double left, double right, double bottom, double top) {
        double[] x = {left, right};
        return between(x, new double[] {bottom, bottom}, new double[] {top, top});
    }

    /** Returns this area with a label. */
    public Area labelled(String text) {
        return new Area(upper, lower, ink, hatched, text);
    }

    /** Returns this area in a colour. */
    public Area in(Ink colour) {
        return new Area(upper, lower, colour, hatched, label);
    }

    /** Returns this area hatched, in grey. */
    public Area asHatched() {
        return new Area(upper, lower, Ink.GREY, true, label);
    }
}

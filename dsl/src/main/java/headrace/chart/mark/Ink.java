package headrace.chart.mark;

/**
 * The colours of the house.
 *
 * <p>Seven of the eight colours of Okabe and Ito, told apart with every common form of colour vision; their yellow is
 * left out because a yellow line on white cannot be seen. The first five are dark enough for lines on white (3:1 at
 * least); {@link #SKY} and {@link #ORANGE} are for areas and bars.
 *
 * <p>Source: M. Okabe and K. Ito, Color Universal Design, 2008 (colour values from memory). The grey is our own.
 */
public enum Ink {
    /** Near black: what is required, or measured. */
    BLACK(0x1F2328),
    /** The first choice for a line. */
    BLUE(0x0072B2),
    /** The second. */
    VERMILION(0xD55E00),
    /** The third. */
    GREEN(0x009E73),
    /** The fourth. */
    PURPLE(0xCC79A7),
    /** For areas and bars. */
    SKY(0x56B4E9),
    /** For areas and bars. */
    ORANGE(0xE69F00),
    /** For what stands behind: contours, references. */
    GREY(0x6B7480);

    /** The contrast to white that small lettering needs, by WCAG 2.2, success criterion 1.4.3. */
    private static final double LETTERING_CONTRAST = 4.5;

    private final int rgb;

    Ink(int rgb) {
        this.rgb = rgb;
    }

    /** Returns the colour as {@code 0xRRGGBB}. */
    public int rgb() {
        return rgb;
    }

    /** Returns the colour for lettering: the same hue, darkened until it can be read on white. */
    public int letteringRgb() {
        double share = 1;
        int colour = rgb;
        while (contrastToWhite(colour) < LETTERING_CONTRAST) {
            share -= 0.05;
            colour = scaled(16, share) | scaled(8, share) | scaled(0, share);
        }
        return colour;
    }

    private int scaled(int shift, double share) {
        return (int) Math.round((rgb >> shift & 0xFF) * share) << shift;
    }

    /** Returns the contrast to white from 1 to 21, by WCAG 2.2. */
    static double contrastToWhite(int rgb) {
        double luminance = 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8) + 0.0722 * linear(rgb);
        return 1.05 / (luminance + 0.05);
    }

    private static double linear(int channel) {
        double value = (channel & 0xFF) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }
}

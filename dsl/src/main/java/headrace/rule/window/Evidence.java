package headrace.rule.window;

import headrace.units.Ratio;

/**
 * What was found on both sides of an end of the window.
 *
 * @param end which end, in words
 * @param inside the minimum head just inside
 * @param insideSays what happens there
 * @param outside the minimum head just outside
 * @param outsideSays what happens there
 */
public record Evidence(String end, Ratio inside, String insideSays, Ratio outside, String outsideSays) {
    /** So far from an end, as a share of the design head, lies what is looked at: a tenth of a point. */
    static final double ASIDE = 0.001;
}

/**
 * Lines, areas and lettering on a page: geometry in pixels, a typeface of our own, and the two surfaces that take them.
 *
 * <p>Knows no axis and no chart. Lettering is drawn as outlines everywhere, so that a chart looks the same on a machine
 * without fonts and in a reader's browser; see {@code docs/decisions}.
 */
package headrace.chart.paint;

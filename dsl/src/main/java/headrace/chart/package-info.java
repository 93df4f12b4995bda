/**
 * Charts: axes, lines, areas, hatching, contours and labels that do not overlap, to SVG and PNG. Knows no pump.
 *
 * <p>A {@link headrace.chart.Chart} is made of {@link headrace.chart.mark marks} and drawn with
 * {@link headrace.chart.paint}. May use {@code headrace.problem}, {@code work}, {@code record}, {@code units} and
 * {@code numeric}.
 */
package headrace.chart;

/**
 * What can be drawn on a chart, as values: lines, points, areas, contours, reference lines, bars.
 *
 * <p>Coordinates are plain numbers in the units of the chart's axes. Each mark may carry a label; where it stands is
 * for the chart to find.
 */
package headrace.chart.mark;

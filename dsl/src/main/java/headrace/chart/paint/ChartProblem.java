package headrace.chart.paint;

import headrace.problem.Problem;

/** What can be wrong with a chart. */
public enum ChartProblem implements Problem {
    /** A value to be drawn is infinite or not a number, or the lists of values differ in length. */
    UNDRAWABLE_VALUE,
    /** A chart without anything on it. */
    NOTHING_TO_DRAW,
    /** A width or a scale for which the style is not made. */
    CHART_SIZE_OUT_OF_RANGE
}

package headrace.chart.mark;

/** The shape of a point. */
public enum Symbol {
    /** A filled circle. */
    CIRCLE,
    /** A circle with a white middle. */
    RING,
    /** A filled square. */
    SQUARE,
    /** A filled triangle that stands on its side. */
    TRIANGLE,
    /** A filled square on its corner. */
    DIAMOND,
    /** Two strokes that cross upright. */
    PLUS,
    /** Two strokes that cross aslant. */
    CROSS
}

package headrace.chart.mark;

/** How a line is broken. */
public enum Dash {
    /** Not broken: inside the data. */
    SOLID,
    /** Dashes: continued beyond the data by the caller's choice. */
    DASHED,
    /** Dots: a limit or a thought. */
    DOTTED,
    /** Dashes and dots in turn: the other side, such as the circuit against the pump. */
    DASH_DOT
}

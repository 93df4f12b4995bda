package headrace.chart.mark;

/** Something drawn on a panel of a chart. */
public sealed interface Mark permits Line, Points, Area, ContourLines, Reference {
    /** Returns the label, blank for none. */
    String label();

    /** Returns the colour. */
    Ink ink();
}

package headrace.chart;

import headrace.chart.mark.Ink;
import headrace.chart.paint.Box;
import headrace.chart.paint.Hatching;
import headrace.chart.paint.Pen;
import headrace.chart.paint.Surface;
import java.awt.geom.Path2D;

/**
 * How the bars of one series are filled: plain, hatched or empty in turn, so that they are told apart without colour.
 *
 * @param style of the page
 * @param ink the colour
 * @param order of the series, from 0
 */
record BarFilling(Style style, Ink ink, int order) {
    private static final int WHITE = 0xFFFFFF;
    private static final double TINT = 0.25;

    void fill(Surface surface, Box bar) {
        if (bar.width() <= 0) {
            return;
        }
        switch (order % 3) {
            case 0 -> surface.fill(Plan.rectangle(bar), ink.rgb(), 1);
            case 1 -> {
                surface.fill(Plan.rectangle(bar), ink.rgb(), TINT);
                hatch(surface, bar);
                edge(surface, bar);
            }
            default -> {
                surface.fill(Plan.rectangle(bar), WHITE, 1);
                edge(surface, bar);
            }
        }
    }

    private void hatch(Surface surface, Box bar) {
        Path2D.Double strokes = new Path2D.Double();
        Hatching.over(Plan.rectangle(bar), 0.5 * style.text())
                .forEach(stroke -> strokes.append(stroke.toPath(), false));
        if (strokes.getCurrentPoint() != null) {
            surface.stroke(strokes, pen());
        }
    }

    private void edge(Surface surface, Box bar) {
        surface.stroke(Plan.rectangle(bar.grown(-pen().width() / 2)), pen());
    }

    private Pen pen() {
        return Pen.solid(ink.rgb(), 0.09 * style.text());
    }
}

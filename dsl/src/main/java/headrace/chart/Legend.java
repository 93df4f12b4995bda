package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.paint.Box;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Typeface;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;

/** The names of what could not be named in its place, in rows beneath the chart. */
final class Legend {
    /**
     * One line of the legend before it has a place.
     *
     * @param key the number that stands at the mark, blank for none
     * @param text what it is called
     * @param swatch draws a sample into a box
     */
    record Entry(String key, String text, BiConsumer<Surface, Box> swatch) {
        String words() {
            return key.isBlank() ? text : key + "\u2002" + text;
        }
    }

    private final Style style;
    private final double left;
    private final double right;
    private double x;
    private double y;

    Legend(Style style, double left, double right, double top) {
        this.style = style;
        this.left = left;
        this.right = right;
        this.x = left;
        this.y = top;
    }

    /** Adds the entries to the plan and returns where they end. */
    double add(List<Entry> entries, Plan.Page page) {
        double swatch = 2 * style.text();
        double indent = swatch + 0.6 * style.text();
        double column = columnWidth(entries, indent);
        for (Entry entry : entries) {
            List<String> lines = Style.wrapped(entry.words(), Typeface.REGULAR, style.text(), right - left - indent);
            double wide =
                    indent + lines.stream().mapToDouble(style::textWidth).max().orElse(0);
            if (x > left && x + wide > right) {
                nextRow();
            }
            Box sample = new Box(x, y - 0.72 * style.text(), swatch, 0.86 * style.text());
            page.paint(surface -> entry.swatch().accept(surface, sample));
            for (int i = 0; i < lines.size(); i++) {
                double base = y + i * style.line();
                page.text(Role.LEGEND, style.lettering(lines.get(i), style.text(), Style.TEXT, x + indent, base));
            }
            if (lines.size() > 1) {
                y += (lines.size() - 1) * style.line();
                nextRow();
            } else {
                x += column * Math.ceil((wide + style.text()) / column - 1e-9);
            }
        }
        return x > left ? y : y - style.line();
    }

    private void nextRow() {
        x = left;
        y += style.line();
    }

    /** Entries stand in columns of equal width if at least two fit side by side. */
    private double columnWidth(List<Entry> entries, double indent) {
        List<Double> widths = new ArrayList<>();
        for (Entry entry : entries) {
            widths.add(indent + style.textWidth(entry.words()) + 1.5 * style.text());
        }
        double widest = widths.stream().mapToDouble(w -> w).max().orElse(right - left);
        double columns = Math.max(1, Math.floor((right - left) / widest));
        return (right - left) / columns;
    }
}

package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.paint.Box;
import headrace.chart.paint.Lettering;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Typeface;
import java.util.Arrays;
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
    record Entry(String key, String text, BiConsumer<Surface, Box> swatch) {}

    private final Plan.Page page;
    private final Style style;
    private final double left;
    private final double right;
    private double x;
    private double y;

    /** Creates the legend of a page, its first row standing on a base line. */
    Legend(Plan.Page page, double base) {
        this.page = page;
        this.style = page.style();
        this.left = style.margin();
        this.right = style.width() - style.margin();
        this.x = left;
        this.y = base;
    }

    /** Adds the entries to the page and returns the base line of the last row. */
    double add(List<Entry> entries) {
        double column = columnWidth(entries);
        for (Entry entry : entries) {
            double indent = indent(entry);
            List<String> lines = Style.wrapped(entry.text(), Typeface.REGULAR, style.text(), right - left - indent);
            double wide =
                    indent + lines.stream().mapToDouble(style::textWidth).max().orElse(0);
            if (x > left && x + wide > right) {
                nextRow();
            }
            add(entry, lines);
            if (lines.size() > 1) {
                y += (lines.size() - 1) * style.line();
                nextRow();
            } else {
                x += column * Math.ceil((wide + style.text()) / column - 1e-9);
            }
        }
        return x > left ? y : y - style.line();
    }

    private void add(Entry entry, List<String> lines) {
        Box sample = new Box(x, y - 0.72 * style.text(), swatch(), 0.86 * style.text());
        page.paint(surface -> entry.swatch().accept(surface, sample));
        if (!entry.key().isBlank()) {
            double at = x + swatch() + 0.6 * style.text();
            page.text(Role.LEGEND, new Lettering(entry.key(), Typeface.SEMIBOLD, style.text(), Style.TEXT, at, y));
        }
        for (int i = 0; i < lines.size(); i++) {
            double base = y + i * style.line();
            page.text(Role.LEGEND, style.lettering(lines.get(i), Style.TEXT, x + indent(entry), base));
        }
    }

    private double swatch() {
        return 2 * style.text();
    }

    /** Returns how far the words stand from the sample's left edge. */
    private double indent(Entry entry) {
        double key =
                entry.key().isBlank() ? 0 : Typeface.SEMIBOLD.width(entry.key(), style.text()) + 0.5 * style.text();
        return swatch() + 0.6 * style.text() + key;
    }

    private void nextRow() {
        x = left;
        y += style.line();
    }

    /** Entries stand in one row if they fit, else in columns wide enough for most; a longer one takes several. */
    private double columnWidth(List<Entry> entries) {
        double[] widths = entries.stream()
                .mapToDouble(entry -> indent(entry) + style.textWidth(entry.text()) + style.text())
                .sorted()
                .toArray();
        if (Arrays.stream(widths).sum() <= right - left) {
            return 1;
        }
        double usual = widths[(int) Math.round(0.6 * (widths.length - 1))];
        return (right - left) / Math.max(1, Math.floor((right - left) / usual));
    }
}

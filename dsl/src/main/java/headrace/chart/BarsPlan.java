package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.Legend.Entry;
import headrace.chart.mark.Bars;
import headrace.chart.paint.Box;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Typeface;
import java.awt.geom.Path2D;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** Lying bars with their names, their values and their legend. On a narrow page the names stand above the bars. */
final class BarsPlan {
    private static final int NARROW = 560;
    private static final double MOST_FOR_NAMES = 0.34;
    /** So that a name still fits into the room that was measured for it. */
    private static final double ROUNDING = 1e-6;

    private static final int WHITE = 0xFFFFFF;

    private final Style style;
    private final Plan.Page page;
    private final Bars bars;
    private final boolean beside;
    private final Ticks ticks;
    private final double left;
    private final double right;

    BarsPlan(Plan.Page page, Bars bars, Axis axis) {
        this.page = page;
        this.style = page.style();
        this.bars = bars;
        beside = style.width() >= NARROW;
        double widest =
                bars.names().stream().mapToDouble(style::textWidth).max().orElse(0);
        double names = Math.min(widest, MOST_FOR_NAMES * style.width()) + 1.5 * style.gap();
        double begin = style.margin() + (beside ? names : 0);
        double end = style.width() - 1.6 * style.margin();
        ticks = Plan.ticksAcross(style, axis, withValues(Extent.of(bars), end - begin), end - begin);
        left = Math.max(begin, Plan.overhang(style, ticks, 0));
        right = Math.min(
                end, style.width() - Plan.overhang(style, ticks, ticks.labels().size() - 1));
    }

    /** Adds everything to the page and returns where it ends. */
    double add(Axis axis, double top) {
        double first = top + 0.6 * style.text();
        List<Double> tops = new ArrayList<>();
        double y = first;
        for (String name : bars.names()) {
            tops.add(y);
            double text = lines(name).size() * style.line();
            y += (beside ? Math.max(text, thickness()) : text + thickness()) + 0.9 * style.text();
        }
        Box frame = new Box(left, first - 0.3 * style.text(), right - left, y - first);
        Scale scale = new Scale(frame, ticks, new Ticks(0, 1, List.of(), List.of(), 0));
        page.frame(frame);
        page.paint(surface -> grid(surface, scale));
        for (int i = 0; i < tops.size(); i++) {
            addName(lines(bars.names().get(i)), tops.get(i));
            addBars(i, tops.get(i), scale);
        }
        page.paint(surface -> baseLine(surface, scale));
        double bottom = Plan.axisAcross(page, scale, axis);
        return Plan.legend(page, entries(), bottom);
    }

    private void addName(List<String> lines, double top) {
        double text = lines.size() * style.line();
        double y = beside ? top + Math.max(0, (thickness() - text) / 2) : top;
        for (String line : lines) {
            double x = beside ? left - 1.5 * style.gap() - style.textWidth(line) : left + 0.4 * style.gap();
            double base = y + (Typeface.ASCENT + 0.1) * style.text();
            page.text(Role.BAR_NAME, style.lettering(line, Style.TEXT, x, base));
            y += style.line();
        }
    }

    private void addBars(int index, double top, Scale scale) {
        double text = lines(bars.names().get(index)).size() * style.line();
        double y = beside ? top + Math.max(0, (text - thickness()) / 2) : top + text;
        double sum = 0;
        for (int s = 0; s < bars.series().size(); s++) {
            Bars.Series series = bars.series().get(s);
            double value = series.values().get(index);
            double from = bars.stacked() ? sum : 0;
            Box bar = bar(scale, from, from + value, y);
            BarFilling filling = new BarFilling(style, series.ink(), s);
            page.paint(surface -> filling.fill(surface, bar));
            sum += value;
            if (!bars.stacked()) {
                addValue(bar, value, scale.frame());
                y += barHeight();
            }
        }
        if (bars.stacked()) {
            addValue(bar(scale, 0, sum, y), sum, scale.frame());
        }
    }

    private Box bar(Scale scale, double from, double to, double top) {
        double begin = scale.x(Math.min(from, to));
        return new Box(begin, top, scale.x(Math.max(from, to)) - begin, 0.86 * barHeight());
    }

    /** Sets a value beyond the end of its bar, or on a white patch within it where a fixed axis ends too soon. */
    private void addValue(Box bar, double value, Box frame) {
        String text = Ticks.print(rounded(value));
        double width = style.textWidth(text);
        double room = 0.5 * style.gap();
        boolean negative = value < 0;
        double x = negative ? bar.x() - room - width : bar.right() + room;
        if (x < frame.x() || x + width > frame.right()) {
            x = negative ? Math.max(bar.x(), frame.x()) + room : Math.min(bar.right(), frame.right()) - room - width;
            Box patch = new Box(x - room / 2, bar.y() + 1, width + room, bar.height() - 2);
            page.paint(surface -> surface.fill(Plan.rectangle(patch), WHITE, 0.92));
        }
        double base = bar.centre() + Typeface.CAPITAL_HEIGHT / 2 * style.text();
        page.text(Role.BAR_VALUE, style.lettering(text, Style.TEXT, x, base));
    }

    /** Four significant digits, as everywhere in the house. */
    private static BigDecimal rounded(double value) {
        BigDecimal rounded = new BigDecimal(value, new MathContext(4)).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }

    /** Returns the extent with room for the values beyond the longest bars. */
    private Extent withValues(Extent extent, double room) {
        double widest = bars.series().stream()
                .flatMap(series -> series.values().stream())
                .mapToDouble(value -> style.textWidth(Ticks.print(rounded(value))))
                .max()
                .orElse(0);
        double share = (widest + 2 * style.gap()) / Math.max(room - widest, widest);
        double more = share * (extent.high() - extent.low());
        return new Extent(extent.low() < 0 ? extent.low() - more : extent.low(), extent.high() + more);
    }

    private List<Entry> entries() {
        List<Entry> entries = new ArrayList<>();
        for (int s = 0; s < bars.series().size(); s++) {
            Bars.Series series = bars.series().get(s);
            if (!series.label().isBlank()) {
                entries.add(new Entry("", series.label(), new BarFilling(style, series.ink(), s)::fill));
            }
        }
        return entries;
    }

    private void grid(Surface surface, Scale scale) {
        Path2D.Double lines = new Path2D.Double();
        for (double value : scale.across().values()) {
            lines.moveTo(scale.x(value), scale.frame().y());
            lines.lineTo(scale.x(value), scale.frame().bottom());
        }
        surface.stroke(lines, style.grid());
    }

    private void baseLine(Surface surface, Scale scale) {
        Path2D.Double line = new Path2D.Double();
        line.moveTo(scale.x(0), scale.frame().y());
        line.lineTo(scale.x(0), scale.frame().bottom());
        surface.stroke(line, style.baseLine());
    }

    private List<String> lines(String name) {
        double room = beside ? left - style.margin() - 1.5 * style.gap() + ROUNDING : right - left;
        return Style.wrapped(name, Typeface.REGULAR, style.text(), room);
    }

    private double barHeight() {
        return 1.55 * style.text();
    }

    private double thickness() {
        return barHeight() * (bars.stacked() ? 1 : bars.series().size());
    }
}

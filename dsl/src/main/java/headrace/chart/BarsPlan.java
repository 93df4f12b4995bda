package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.Legend.Entry;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.chart.paint.Box;
import headrace.chart.paint.Hatching;
import headrace.chart.paint.Pen;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Typeface;
import java.awt.geom.Path2D;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** Lying bars with their names, their values and their legend. */
final class BarsPlan {
    private static final int WHITE = 0xFFFFFF;

    private final Style style;
    private final Plan.Page page;

    BarsPlan(Style style, Plan.Page page) {
        this.style = style;
        this.page = page;
    }

    /** Adds everything to the page and returns where it ends. */
    double add(Bars bars, Axis axis, double top) {
        boolean beside = style.width() >= 560;
        double names = beside ? Math.min(widestName(bars), 0.34 * style.width()) : 0;
        double left = style.margin() + names + (beside ? style.gap() * 1.5 : 0);
        double right = style.width() - 1.6 * style.margin();
        double first = top + 0.6 * style.text();
        Ticks ticks = Plan.ticksAcross(style, axis, Extent.of(bars), right - left);
        right = Math.min(
                right,
                style.width() - Plan.overhang(style, ticks, ticks.labels().size() - 1));
        left = Math.max(left, Plan.overhang(style, ticks, 0));
        double room = right - left;
        List<List<String>> wrapped = bars.names().stream()
                .map(name -> Style.wrapped(name, Typeface.REGULAR, style.text(), beside ? names : room))
                .toList();
        double y = first;
        List<Double> tops = new ArrayList<>();
        for (List<String> name : wrapped) {
            tops.add(y);
            double text = name.size() * style.line();
            double thick = barsHeight(bars);
            y += (beside ? Math.max(text, thick) : text + thick) + 0.9 * style.text();
        }
        Box frame = new Box(left, first - 0.3 * style.text(), right - left, y - first);
        Scale scale = new Scale(frame, ticks, new Ticks(0, 1, List.of(), List.of(), 0));
        page.frame(frame);
        page.paint(surface -> grid(surface, scale));
        for (int i = 0; i < wrapped.size(); i++) {
            add(bars, i, wrapped.get(i), tops.get(i), scale, beside);
        }
        page.paint(surface -> baseLine(surface, scale));
        double bottom = Plan.axisAcross(style, page, scale, axis);
        return Plan.legend(style, page, entries(bars), bottom);
    }

    private void add(Bars bars, int index, List<String> name, double top, Scale scale, boolean beside) {
        double text = name.size() * style.line();
        double thick = barsHeight(bars);
        double nameTop = beside ? top + Math.max(0, (thick - text) / 2) : top;
        for (int i = 0; i < name.size(); i++) {
            double width = style.textWidth(name.get(i));
            double x = beside
                    ? scale.frame().x() - 1.5 * style.gap() - width
                    : scale.frame().x() + 0.4 * style.gap();
            double base = nameTop + i * style.line() + (Typeface.ASCENT + 0.1) * style.text();
            page.text(Role.BAR_NAME, style.lettering(name.get(i), style.text(), Style.TEXT, x, base));
        }
        double y = beside ? top + Math.max(0, (text - thick) / 2) : top + text;
        if (bars.stacked()) {
            stack(bars, index, y, scale);
        } else {
            for (int s = 0; s < bars.series().size(); s++) {
                Bars.Series series = bars.series().get(s);
                double value = series.values().get(index);
                Box bar = bar(scale, Math.min(0, value), Math.max(0, value), y + s * barHeight());
                int order = s;
                page.paint(surface -> fill(surface, bar, series.ink(), order));
                valueAt(bar, value, series.ink(), scale, true);
            }
        }
    }

    private void stack(Bars bars, int index, double y, Scale scale) {
        double sum = 0;
        for (int s = 0; s < bars.series().size(); s++) {
            Bars.Series series = bars.series().get(s);
            double value = series.values().get(index);
            Box bar = bar(scale, sum, sum + value, y);
            int order = s;
            page.paint(surface -> fill(surface, bar, series.ink(), order));
            sum += value;
        }
        valueAt(
                bar(scale, 0, sum, y),
                sum,
                bars.series().get(bars.series().size() - 1).ink(),
                scale,
                true);
    }

    private Box bar(Scale scale, double from, double to, double top) {
        return new Box(scale.x(from), top, scale.x(to) - scale.x(from), 0.86 * barHeight());
    }

    /** Sets a value beyond the end of its bar, or within it where the frame ends first. */
    private void valueAt(Box bar, double value, Ink ink, Scale scale, boolean outside) {
        String text = Ticks.print(round(value));
        double width = style.textWidth(text);
        double room = 0.5 * style.gap();
        boolean negative = value < 0;
        double x = negative ? bar.x() - room - width : bar.right() + room;
        boolean fits =
                negative ? x >= scale.frame().x() : x + width <= scale.frame().right() - room;
        int rgb = Style.TEXT;
        if (!fits) {
            x = negative ? bar.x() + room : bar.right() - room - width;
            Box patch = new Box(x - room / 2, bar.y() + 1, width + room, bar.height() - 2);
            page.paint(surface -> surface.fill(Plan.rectangle(patch), WHITE, 0.92));
        }
        double base = bar.centre() + Typeface.CAPITAL_HEIGHT / 2 * style.text();
        page.text(Role.BAR_VALUE, style.lettering(text, style.text(), rgb, x, base));
    }

    /** Four significant digits, as everywhere in the house. */
    private static BigDecimal round(double value) {
        BigDecimal rounded = new BigDecimal(value, new MathContext(4)).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }

    /** Fills a bar plain, hatched or empty in turn, so that the colour is not needed to tell them apart. */
    private void fill(Surface surface, Box bar, Ink ink, int order) {
        if (bar.width() <= 0) {
            return;
        }
        Path2D.Double outline = new Path2D.Double(Plan.rectangle(bar));
        double width = 0.09 * style.text();
        if (order % 3 == 0) {
            surface.fill(outline, ink.rgb(), 1);
            return;
        }
        surface.fill(outline, order % 3 == 1 ? ink.rgb() : WHITE, order % 3 == 1 ? 0.25 : 1);
        if (order % 3 == 1) {
            Path2D.Double strokes = new Path2D.Double();
            Hatching.over(outline, 0.5 * style.text()).forEach(stroke -> strokes.append(stroke.toPath(), false));
            if (strokes.getCurrentPoint() != null) {
                surface.stroke(strokes, Pen.solid(ink.rgb(), width));
            }
        }
        surface.stroke(Plan.rectangle(bar.grown(-width / 2)), Pen.solid(ink.rgb(), width));
    }

    private List<Entry> entries(Bars bars) {
        List<Entry> entries = new ArrayList<>();
        for (int s = 0; s < bars.series().size(); s++) {
            Bars.Series series = bars.series().get(s);
            int order = s;
            if (!series.label().isBlank()) {
                entries.add(new Entry("", series.label(), (surface, box) -> fill(surface, box, series.ink(), order)));
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

    private double barHeight() {
        return 1.55 * style.text();
    }

    private double barsHeight(Bars bars) {
        return barHeight() * (bars.stacked() ? 1 : bars.series().size());
    }

    private double widestName(Bars bars) {
        return bars.names().stream().mapToDouble(style::textWidth).max().orElse(0);
    }
}

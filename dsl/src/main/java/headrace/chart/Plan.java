package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.Legend.Entry;
import headrace.chart.paint.Box;
import headrace.chart.paint.Lettering;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Typeface;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** A chart at one width: where everything stands, and the steps that draw it. */
final class Plan {
    /** Collects the steps and the lettering of a page. */
    static final class Page {
        private final List<Consumer<Surface>> steps = new ArrayList<>();
        private final List<Layout.Text> texts = new ArrayList<>();
        private final List<Box> frames = new ArrayList<>();

        void paint(Consumer<Surface> step) {
            steps.add(step);
        }

        void text(Role role, Lettering lettering) {
            texts.add(new Layout.Text(role, lettering.text(), lettering.box()));
            steps.add(surface -> surface.letter(lettering));
        }

        void placed(List<Layout.Text> labels) {
            texts.addAll(labels);
        }

        void frame(Box box) {
            frames.add(box);
        }
    }

    private final Style style;
    private final Page page = new Page();
    private final double height;

    private Plan(Chart chart, int width) {
        style = new Style(width);
        double top = style.margin();
        top = lines(Role.TITLE, chart.title(), top);
        double bottom = chart.bars().isPresent()
                ? new BarsPlan(style, page).add(chart.bars().get(), chart.across(), top)
                : new PanelStack(style, page).add(chart, top);
        bottom = lines(Role.CAPTION, chart.caption(), bottom + 0.4 * style.text());
        height = Math.ceil(bottom + 0.5 * style.margin());
    }

    static Plan of(Chart chart, int width) {
        return new Plan(chart, width);
    }

    Layout layout() {
        return new Layout(style.width(), height, page.frames, page.texts);
    }

    double height() {
        return height;
    }

    void paint(Surface surface) {
        page.steps.forEach(step -> step.accept(surface));
    }

    /** Sets a text over the whole width and returns where it ends. */
    private double lines(Role role, String text, double top) {
        if (text.isBlank()) {
            return top;
        }
        boolean title = role == Role.TITLE;
        Typeface face = title ? Typeface.SEMIBOLD : Typeface.REGULAR;
        double size = title ? style.title() : 0.92 * style.text();
        double y = top;
        for (String line : Style.wrapped(text, face, size, style.width() - 2 * style.margin())) {
            int rgb = title ? Style.TEXT : Style.QUIET_TEXT;
            page.text(role, new Lettering(line, face, size, rgb, style.margin(), y + Typeface.ASCENT * size));
            y += 1.25 * size;
        }
        return y;
    }

    /** Adds the legend beneath something and returns where it ends. */
    static double legend(Style style, Page page, List<Entry> entries, double top) {
        if (entries.isEmpty()) {
            return top;
        }
        double first = top + 0.5 * style.text() + Typeface.ASCENT * style.text();
        Legend legend = new Legend(style, style.margin(), style.width() - style.margin(), first);
        return legend.add(entries, page) + Typeface.DESCENT * style.text() + 0.3 * style.text();
    }

    /** Sets the numbers and the title of the axis across beneath a frame and returns where they end. */
    static double axisAcross(Style style, Page page, Scale scale, Axis axis) {
        Box frame = scale.frame();
        Ticks ticks = scale.across();
        double size = style.tick();
        double base = frame.bottom() + 0.6 * style.text() + Typeface.ASCENT * size;
        for (int i = 0; i < ticks.values().size(); i++) {
            String label = ticks.labels().get(i);
            double x = scale.x(ticks.values().get(i)) - Typeface.REGULAR.width(label, size) / 2;
            page.text(Role.TICK, style.lettering(label, size, Style.QUIET_TEXT, x, base));
        }
        double y = base + Typeface.DESCENT * size;
        String title = ticks.title(axis);
        if (title.isBlank()) {
            return y;
        }
        for (String line : Style.wrapped(title, Typeface.REGULAR, style.text(), frame.width())) {
            double x = frame.middle() - style.textWidth(line) / 2;
            double at = y + 0.4 * style.text() + Typeface.ASCENT * style.text();
            page.text(Role.AXIS_TITLE, style.lettering(line, style.text(), Style.TEXT, x, at));
            y += style.line();
        }
        return y + 0.15 * style.text();
    }

    /** Returns how many steps an axis has room for, by the width of its longest label. */
    static Ticks ticksAcross(Style style, Axis axis, Extent range, double room) {
        double most = room / (1.6 * style.tickSpacing());
        Ticks ticks = Ticks.over(axis, range.low(), range.high(), most);
        for (double steps = most; steps > 1; steps *= 0.8) {
            ticks = Ticks.over(axis, range.low(), range.high(), steps);
            double widest = ticks.labels().stream()
                    .mapToDouble(label -> Typeface.REGULAR.width(label, style.tick()))
                    .max()
                    .orElse(0);
            if (widest + 1.2 * style.text() <= room / Math.max(1, ticks.values().size() - 1)) {
                break;
            }
        }
        return ticks;
    }

    /** Returns half the width of one of the numbers of an axis: how far it may reach beyond the frame. */
    static double overhang(Style style, Ticks ticks, int index) {
        boolean none = ticks.labels().isEmpty();
        return 0.3 * style.margin()
                + (none ? 0 : Typeface.REGULAR.width(ticks.labels().get(index), style.tick()) / 2);
    }

    static Rectangle2D rectangle(Box box) {
        return new Rectangle2D.Double(box.x(), box.y(), box.width(), box.height());
    }
}

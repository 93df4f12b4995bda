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
        private final Style style;
        private final List<Consumer<Surface>> steps = new ArrayList<>();
        private final List<Layout.Text> texts = new ArrayList<>();
        private final List<Box> frames = new ArrayList<>();

        private Page(Style style) {
            this.style = style;
        }

        Style style() {
            return style;
        }

        void paint(Consumer<Surface> step) {
            steps.add(step);
        }

        void text(Role role, Lettering lettering) {
            texts.add(new Layout.Text(role, lettering.text(), lettering.box()));
            steps.add(surface -> surface.letter(lettering));
        }

        /** Adds labels that their panel draws itself. */
        void placed(List<Layout.Text> labels) {
            texts.addAll(labels);
        }

        void frame(Box box) {
            frames.add(box);
        }
    }

    private final Style style;
    private final Page page;
    private final double height;

    private Plan(Chart chart, int width) {
        style = new Style(width);
        page = new Page(style);
        double top = lines(Role.TITLE, chart.title(), style.margin());
        double bottom = body(chart, top);
        double end = lines(Role.CAPTION, chart.caption(), bottom + 0.4 * style.text());
        height = Math.ceil(end + 0.5 * style.margin());
    }

    private double body(Chart chart, double top) {
        if (chart.diagram().isPresent()) {
            return new DiagramPlan(page, chart.diagram().get()).add(top);
        }
        return chart.bars()
                .map(bars -> new BarsPlan(page, bars, chart.across()).add(chart.across(), top))
                .orElseGet(() -> new PanelStack(page, chart).add(top));
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
        int rgb = title ? Style.TEXT : Style.QUIET_TEXT;
        double y = top;
        for (String line : Style.wrapped(text, face, size, style.width() - 2 * style.margin())) {
            page.text(role, new Lettering(line, face, size, rgb, style.margin(), y + Typeface.ASCENT * size));
            y += 1.25 * size;
        }
        return y;
    }

    /** Adds the legend beneath something and returns where it ends. */
    static double legend(Page page, List<Entry> entries, double top) {
        if (entries.isEmpty()) {
            return top;
        }
        double text = page.style().text();
        Legend legend = new Legend(page, top + (0.5 + Typeface.ASCENT) * text);
        return legend.add(entries) + (Typeface.DESCENT + 0.3) * text;
    }

    /** Sets the numbers and the title of the axis across beneath a frame and returns where they end. */
    static double axisAcross(Page page, Scale scale, Axis axis) {
        Style style = page.style();
        Box frame = scale.frame();
        Ticks ticks = scale.across();
        double base = frame.bottom() + style.tickGap() + Typeface.ASCENT * style.tick();
        for (int i = 0; i < ticks.values().size(); i++) {
            String label = ticks.labels().get(i);
            page.text(Role.TICK, style.tick(label, scale.x(ticks.values().get(i)) - style.tickWidth(label) / 2, base));
        }
        double y = base + Typeface.DESCENT * style.tick();
        if (ticks.title(axis).isBlank()) {
            return y;
        }
        for (String line : Style.wrapped(ticks.title(axis), Typeface.REGULAR, style.text(), frame.width())) {
            double at = y + (0.4 + Typeface.ASCENT) * style.text();
            page.text(
                    Role.AXIS_TITLE, style.lettering(line, Style.TEXT, frame.middle() - style.textWidth(line) / 2, at));
            y += style.line();
        }
        return y + 0.15 * style.text();
    }

    /** Returns as many round numbers as stand side by side without crowding. */
    static Ticks ticksAcross(Style style, Axis axis, Extent range, double room) {
        double most = room / (1.6 * style.tickSpacing());
        Ticks ticks = Ticks.over(axis, range, most);
        for (double steps = most; steps > 1; steps *= 0.8) {
            ticks = Ticks.over(axis, range, steps);
            if (style.widest(ticks) + 1.2 * style.text()
                    <= room / Math.max(1, ticks.values().size() - 1)) {
                break;
            }
        }
        return ticks;
    }

    /** Returns how far one of the numbers of an axis needs the page to go on beyond the frame. */
    static double overhang(Style style, Ticks ticks, int index) {
        double half =
                ticks.labels().isEmpty() ? 0 : style.tickWidth(ticks.labels().get(index)) / 2;
        return 0.3 * style.margin() + half;
    }

    static Rectangle2D rectangle(Box box) {
        return new Rectangle2D.Double(box.x(), box.y(), box.width(), box.height());
    }
}

package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.Legend.Entry;
import headrace.chart.PanelPlan.Name;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.paint.Box;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Track;
import headrace.chart.paint.Typeface;
import java.util.ArrayList;
import java.util.List;

/** The panels of a chart above one another on one axis across, and their common legend. */
final class PanelStack {
    /** Said of a line among lines of its look that has room neither for its name nor for a number. */
    private static final String BARE = " (without a label)";

    private final Style style;
    private final Plan.Page page;
    private final Chart chart;
    private final List<Ticks> ups = new ArrayList<>();
    private final Ticks across;
    private final double left;
    private final double right;

    PanelStack(Plan.Page page, Chart chart) {
        this.page = page;
        this.style = page.style();
        this.chart = chart;
        for (int i = 0; i < chart.panels().size(); i++) {
            Chart.Panel panel = chart.panels().get(i);
            Extent extent = Extent.of(List.of(panel), false);
            ups.add(Ticks.over(panel.up(), extent, frameHeight(i) / style.tickSpacing()));
        }
        double labels = ups.stream().mapToDouble(style::widest).max().orElse(0);
        double begin = style.margin() + labels + style.tickGap();
        double end = style.width() - 1.6 * style.margin();
        across = Plan.ticksAcross(style, chart.across(), Extent.of(chart.panels(), true), end - begin);
        left = Math.max(begin, Plan.overhang(style, across, 0));
        right = Math.min(
                end,
                style.width() - Plan.overhang(style, across, across.labels().size() - 1));
    }

    /** Adds all panels and the legend to the page and returns where they end. */
    double add(double top) {
        List<PanelPlan> plans = new ArrayList<>();
        double y = top;
        for (int i = 0; i < ups.size(); i++) {
            Chart.Panel panel = chart.panels().get(i);
            y = title(ups.get(i).title(panel.up()), y);
            Scale scale = new Scale(new Box(left, y, right - left, frameHeight(i)), across, ups.get(i));
            page.frame(scale.frame());
            ticksUp(scale);
            plans.add(new PanelPlan(style, scale, panel.marks()));
            y = scale.frame().bottom() + 0.5 * style.text();
        }
        y = Plan.axisAcross(page, plans.get(plans.size() - 1).scale(), chart.across());
        List<Entry> entries = entries(plans);
        for (PanelPlan plan : plans) {
            page.paint(surface -> new PanelPainter(style, surface).paint(plan));
            page.placed(plan.placed());
        }
        return Plan.legend(page, entries, y);
    }

    private double frameHeight(int index) {
        if (chart.panels().size() == 1) {
            return style.frameHeight();
        }
        return (index == 0 ? 0.7 : 0.34) * style.frameHeight();
    }

    private double title(String text, double top) {
        double y = top + 0.5 * style.text();
        if (text.isBlank()) {
            return y;
        }
        for (String line : Style.wrapped(text, Typeface.REGULAR, style.text(), style.width() - 2 * style.margin())) {
            double base = y + Typeface.ASCENT * style.text();
            page.text(Role.AXIS_TITLE, style.lettering(line, Style.TEXT, style.margin(), base));
            y += style.line();
        }
        return y + 0.45 * style.text();
    }

    private void ticksUp(Scale scale) {
        Ticks ticks = scale.up();
        for (int i = 0; i < ticks.values().size(); i++) {
            String label = ticks.labels().get(i);
            double base = scale.y(ticks.values().get(i)) + Typeface.CAPITAL_HEIGHT / 2 * style.tick();
            page.text(Role.TICK, style.tick(label, left - style.tickGap() - style.tickWidth(label), base));
        }
    }

    /** Names what had no room; where two would look alike but for their colour, a number stands at each. */
    private List<Entry> entries(List<PanelPlan> plans) {
        List<Name> names = new ArrayList<>();
        plans.stream()
                .flatMap(plan -> plan.homeless().stream())
                .filter(name -> names.stream().noneMatch(name::isSameAs))
                .forEach(names::add);
        List<Entry> entries = new ArrayList<>();
        int number = 1;
        for (Name name : names) {
            boolean alike = names.stream().filter(name::looksLike).count() > 1 || name.hasTwin();
            boolean keyed = alike && name.placeKey(number);
            String key = keyed ? Integer.toString(number++) : "";
            String text = !keyed && name.hasTwin() ? name.text() + BARE : name.text();
            entries.add(
                    new Entry(key, text, (surface, box) -> new PanelPainter(style, surface).sample(name.drawn(), box)));
        }
        if (plans.stream().flatMap(plan -> plan.drawn().stream()).anyMatch(PanelStack::isExtended)) {
            entries.add(new Entry("", "dashed: continued beyond the data", this::dashedSample));
        }
        return entries;
    }

    private void dashedSample(Surface surface, Box box) {
        Track line = Track.through(new double[] {box.x(), box.right()}, new double[] {box.centre(), box.centre()});
        surface.stroke(line.toPath(), style.pen(Ink.GREY, Dash.DASHED, PanelPainter.EXTENDED));
    }

    private static boolean isExtended(Drawn drawn) {
        return drawn.mark() instanceof Line line && line.extended();
    }
}

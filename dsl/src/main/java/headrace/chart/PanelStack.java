package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.Legend.Entry;
import headrace.chart.PanelPlan.Homeless;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.paint.Box;
import headrace.chart.paint.Track;
import headrace.chart.paint.Typeface;
import java.util.ArrayList;
import java.util.List;

/** The panels of a chart above one another on one axis across, and their common legend. */
final class PanelStack {
    private final Style style;
    private final Plan.Page page;

    PanelStack(Style style, Plan.Page page) {
        this.style = style;
        this.page = page;
    }

    /** Adds all panels and the legend to the page and returns where they end. */
    double add(Chart chart, double top) {
        List<Ticks> ups = new ArrayList<>();
        double labels = 0;
        for (int i = 0; i < chart.panels().size(); i++) {
            Chart.Panel panel = chart.panels().get(i);
            Extent range = Extent.of(List.of(panel), false);
            Ticks up = Ticks.over(panel.up(), range.low(), range.high(), frameHeight(chart, i) / style.tickSpacing());
            ups.add(up);
            labels = Math.max(labels, widest(up));
        }
        double left = style.margin() + labels + style.gap();
        double right = style.width() - 1.6 * style.margin();
        Ticks across = Plan.ticksAcross(style, chart.across(), Extent.of(chart.panels(), true), right - left);
        right = Math.min(
                right,
                style.width() - Plan.overhang(style, across, across.labels().size() - 1));
        left = Math.max(left, Plan.overhang(style, across, 0));
        List<PanelPlan> plans = new ArrayList<>();
        double y = top;
        Scale scale = null;
        for (int i = 0; i < ups.size(); i++) {
            Chart.Panel panel = chart.panels().get(i);
            y = title(ups.get(i).title(panel.up()), y);
            scale = new Scale(new Box(left, y, right - left, frameHeight(chart, i)), across, ups.get(i));
            page.frame(scale.frame());
            ticksUp(scale);
            plans.add(new PanelPlan(style, scale, panel.marks()));
            y = scale.frame().bottom() + 0.5 * style.text();
        }
        y = Plan.axisAcross(style, page, scale, chart.across());
        List<Entry> entries = entries(plans);
        for (PanelPlan plan : plans) {
            page.paint(surface -> new PanelPainter(style, surface).paint(plan));
            page.placed(plan.placed());
        }
        return Plan.legend(style, page, entries, y);
    }

    private double frameHeight(Chart chart, int index) {
        if (chart.panels().size() == 1) {
            return style.frameHeight();
        }
        return (index == 0 ? 0.75 : 0.38) * style.frameHeight();
    }

    private double widest(Ticks ticks) {
        return ticks.labels().stream()
                .mapToDouble(label -> Typeface.REGULAR.width(label, style.tick()))
                .max()
                .orElse(0);
    }

    private double title(String text, double top) {
        double y = top + 0.5 * style.text();
        if (text.isBlank()) {
            return y;
        }
        for (String line : Style.wrapped(text, Typeface.REGULAR, style.text(), style.width() - 2 * style.margin())) {
            double base = y + Typeface.ASCENT * style.text();
            page.text(Role.AXIS_TITLE, style.lettering(line, style.text(), Style.TEXT, style.margin(), base));
            y += style.line();
        }
        return y + 0.45 * style.text();
    }

    private void ticksUp(Scale scale) {
        Ticks ticks = scale.up();
        for (int i = 0; i < ticks.values().size(); i++) {
            String label = ticks.labels().get(i);
            double x = scale.frame().x() - style.gap() - Typeface.REGULAR.width(label, style.tick());
            double base = scale.y(ticks.values().get(i)) + Typeface.CAPITAL_HEIGHT / 2 * style.tick();
            page.text(Role.TICK, style.lettering(label, style.tick(), Style.QUIET_TEXT, x, base));
        }
    }

    /** Names what had no room; where two would look alike but for their colour, a number stands at each. */
    private List<Entry> entries(List<PanelPlan> plans) {
        List<Homeless> homeless = new ArrayList<>();
        plans.forEach(plan -> plan.homeless().forEach(label -> {
            if (homeless.stream().noneMatch(other -> same(label, other))) {
                homeless.add(label);
            }
        }));
        List<Entry> entries = new ArrayList<>();
        int number = 1;
        for (Homeless label : homeless) {
            boolean alike = homeless.stream().filter(label::looksLike).count() > 1 || label.hasTwin();
            String key = "";
            if (alike && label.panel().placeKey(label, Integer.toString(number))) {
                key = Integer.toString(number++);
            }
            entries.add(new Entry(
                    key, label.text(), (surface, box) -> new PanelPainter(style, surface).sample(label.drawn(), box)));
        }
        if (plans.stream().flatMap(plan -> plan.drawn().stream()).anyMatch(PanelStack::extended)) {
            entries.add(new Entry(
                    "",
                    "dashed: continued beyond the data",
                    (surface, box) -> surface.stroke(
                            Track.through(new double[] {box.x(), box.right()}, new double[] {box.centre(), box.centre()
                                    })
                                    .toPath(),
                            style.pen(Ink.GREY, Dash.DASHED, 0.75))));
        }
        return entries;
    }

    private static boolean same(Homeless a, Homeless b) {
        return a.text().equals(b.text())
                && a.looksLike(b)
                && a.drawn().mark().ink() == b.drawn().mark().ink();
    }

    private static boolean extended(Drawn drawn) {
        return drawn.mark() instanceof Line line && line.extended();
    }
}

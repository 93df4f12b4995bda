package headrace.chart;

import headrace.chart.mark.Bars;
import headrace.chart.mark.Diagram;
import headrace.chart.mark.Mark;
import headrace.chart.paint.ChartProblem;
import headrace.chart.paint.ImageSurface;
import headrace.chart.paint.Surface;
import headrace.chart.paint.SvgSurface;
import headrace.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * A chart, ready to be drawn at any width.
 *
 * <p>One or more panels stand on one axis across; or named bars lie on it. A label stands on what it names where there
 * is room, otherwise in the legend beneath.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Widths in pixels; everything drawn in the units of the axes.
 *   <dt>Limits
 *   <dd>Widths from 400 to 1600 px, for which the style is made; an SVG can be scaled further without loss.
 *   <dt>Errors
 *   <dd>{@link Refusal} with a {@link ChartProblem}.
 *   <dt>Source
 *   <dd>The style is our own; its reasons stand in {@code docs/decisions}.
 * </dl>
 */
public final class Chart {
    /** One plotting area with its axis going up. */
    record Panel(Axis up, List<Mark> marks) {}

    private static final int LEAST_WIDTH = 400;
    private static final int LARGEST_WIDTH = 1600;
    private static final int LARGEST_SCALE = 4;

    private final String title;
    private final String caption;
    private final Axis across;
    private final List<Panel> panels;
    private final Bars bars;
    private final Diagram diagram;

    private Chart(Draft draft) {
        title = draft.title;
        caption = draft.caption;
        across = draft.across;
        panels = List.copyOf(draft.panels);
        bars = draft.bars;
        diagram = draft.diagram;
    }

    /** Returns a draft of a chart with this title. */
    public static Draft titled(String title) {
        return new Draft(title);
    }

    /** What a chart is made from, step by step. */
    public static final class Draft {
        private final String title;
        private final List<Panel> panels = new ArrayList<>();
        private String caption = "";
        private Axis across = Axis.of("", "");
        private Bars bars;
        private Diagram diagram;

        private Draft(String title) {
            this.title = title;
        }

        /** Sets the axis across, shared by all panels. */
        public Draft across(Axis axis) {
            across = axis;
            return this;
        }

        /** Adds a panel beneath the others, with its own axis going up. */
        public Draft panel(Axis up, List<? extends Mark> marks) {
            panels.add(new Panel(up, List.copyOf(marks)));
            return this;
        }

        /** Adds a panel beneath the others, with its own axis going up. */
        public Draft panel(Axis up, Mark... marks) {
            return panel(up, List.of(marks));
        }

        /** Draws bars instead of panels; their values are read off the axis across. */
        public Draft bars(Bars compared) {
            bars = compared;
            return this;
        }

        /** Draws a line diagram instead of panels. */
        public Draft diagram(Diagram drawn) {
            diagram = drawn;
            return this;
        }

        /** Adds a remark beneath the chart: the model in use, an assumption. */
        public Draft caption(String text) {
            caption = text;
            return this;
        }

        /**
         * Returns the chart.
         *
         * @throws Refusal with {@code NOTHING_TO_DRAW} if nothing was added, or with {@code UNDRAWABLE_VALUE} if a
         *     value is infinite or not a number
         */
        public Chart build() {
            if (empty()) {
                throw new Refusal(
                        ChartProblem.NOTHING_TO_DRAW,
                        "Asked for the chart \"" + title + "\" with nothing on it",
                        "A chart shows at least one line, point, area, contour or bar",
                        "Add one before the chart is built");
            }
            return new Chart(this);
        }

        private boolean empty() {
            if (diagram != null) {
                return diagram.rungs().isEmpty();
            }
            return bars == null
                    ? panels.stream().allMatch(panel -> panel.marks().isEmpty())
                    : bars.names().isEmpty() || bars.series().isEmpty();
        }
    }

    /** Returns the chart as SVG of so many pixels across. */
    public String toSvg(int width) {
        Plan plan = plan(width);
        SvgSurface surface = new SvgSurface(width, plan.height(), title, altText());
        plan.paint(surface);
        return surface.toSvg();
    }

    /** Returns the chart as PNG of so many pixels across. */
    public byte[] toPng(int width) {
        return toPng(width, 1);
    }

    /**
     * Returns the chart as PNG, drawn as for so many pixels across and enlarged for a fine screen or for print.
     *
     * @param scale dots for each pixel, from 1 to 4
     */
    public byte[] toPng(int width, double scale) {
        if (!(scale >= 1 && scale <= LARGEST_SCALE)) {
            throw size("a chart at " + scale + " dots for each pixel", "The scale goes from 1 to " + LARGEST_SCALE);
        }
        Plan plan = plan(width);
        ImageSurface surface = new ImageSurface(width, plan.height(), scale);
        plan.paint(surface);
        return surface.toPng();
    }

    /**
     * Draws the chart on a surface of another kind.
     *
     * @param width pixels across, for which the chart lays itself out
     * @param surface makes the surface for so many pixels down, and is drawn on
     */
    public <S extends Surface> S drawn(int width, IntFunction<S> surface) {
        Plan plan = plan(width);
        S made = surface.apply((int) Math.ceil(plan.height()));
        plan.paint(made);
        return made;
    }

    /** Returns where all lettering stands at a width. */
    public Layout layout(int width) {
        return plan(width).layout();
    }

    /** Returns a description in words for those who cannot see the chart. */
    public String altText() {
        return AltText.of(this);
    }

    /** Returns the title. */
    public String title() {
        return title;
    }

    String caption() {
        return caption;
    }

    Axis across() {
        return across;
    }

    List<Panel> panels() {
        return panels;
    }

    Optional<Bars> bars() {
        return Optional.ofNullable(bars);
    }

    Optional<Diagram> diagram() {
        return Optional.ofNullable(diagram);
    }

    private Plan plan(int width) {
        if (width < LEAST_WIDTH || width > LARGEST_WIDTH) {
            throw size(
                    "a chart " + width + " px wide",
                    "Charts are made for " + LEAST_WIDTH + " to " + LARGEST_WIDTH + " px");
        }
        return Plan.of(this, width);
    }

    private static Refusal size(String asked, String possible) {
        return new Refusal(
                ChartProblem.CHART_SIZE_OUT_OF_RANGE,
                "Asked for " + asked,
                possible,
                "Choose a size in that range; an SVG can be scaled further without loss");
    }
}

package headrace.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Layout.Role;
import headrace.chart.mark.Area;
import headrace.chart.mark.Bars;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.paint.ChartProblem;
import headrace.numeric.Contours;
import headrace.numeric.Grid;
import headrace.problem.Refusal;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ChartTest {
    private static final Axis FLOW = Axis.of("Flow", "m³/h");
    private static final Axis HEAD = Axis.of("Head", "m");
    private static final double[] Q = {0, 20, 40};
    private static final double[] H = {16, 14, 8};

    @ParameterizedTest
    @ValueSource(ints = {400, 800, 1600})
    void is_well_formed_svg_of_paths_and_their_uses_alone(int width) throws Exception {
        String svg = new PumpLikeChart(7).chart().toSvg(width);
        Document document = parse(svg);
        Element root = document.getDocumentElement();
        assertEquals(Integer.toString(width), root.getAttribute("width"));
        assertEquals("0 0 " + width + " " + root.getAttribute("height"), root.getAttribute("viewBox"));
        for (int i = 0; i < root.getElementsByTagName("*").getLength(); i++) {
            String name = root.getElementsByTagName("*").item(i).getNodeName();
            assertTrue(List.of("path", "title", "desc", "g", "use", "defs").contains(name), name);
        }
    }

    @Test
    void refers_to_nothing_outside_its_svg() {
        String svg = new PumpLikeChart(7)
                .chart()
                .toSvg(800)
                .replace("xmlns=\"http://www.w3.org/2000/svg\"", "")
                .replace("xmlns:xlink=\"http://www.w3.org/1999/xlink\"", "")
                .replace("xlink:href=\"#", "");
        assertFalse(Pattern.compile("http|href|url\\(|font|style|@import|xmlns")
                .matcher(svg)
                .find());
    }

    @Test
    void keeps_its_words_beside_the_outlines() throws Exception {
        Chart chart = Chart.titled("P-A")
                .across(FLOW)
                .panel(HEAD, Line.through(Q, H).labelled("1450 r/min"))
                .build();
        Element root = parse(chart.toSvg(800)).getDocumentElement();
        assertEquals(chart.altText(), root.getAttribute("aria-label"));
        assertEquals(chart.altText(), root.getElementsByTagName("desc").item(0).getTextContent());
        assertEquals("P-A", root.getElementsByTagName("title").item(0).getTextContent());
        assertTrue(chart.toSvg(800).contains("aria-label=\"1450 r/min\""));
        assertTrue(chart.toSvg(800).contains("aria-label=\"Flow in m³/h\""));
    }

    @Test
    void the_outline_of_each_letter_stands_once_in_a_picture_and_every_letter_has_one() {
        String svg = new PumpLikeChart(7).chart().toSvg(800);
        List<String> outlines = found(svg, "<path id=\"(\\w+)\" d=\"M");
        List<String> used = found(svg, "<use xlink:href=\"#(\\w+)\"");
        assertEquals(new TreeSet<>(used), new TreeSet<>(outlines));
        assertEquals(new TreeSet<>(outlines).size(), outlines.size());
        assertTrue(used.size() > 2 * outlines.size(), used.size() + " letters of " + outlines.size() + " outlines");
    }

    private static List<String> found(String text, String pattern) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map(match -> match.group(1))
                .toList();
    }

    @Test
    void says_in_words_what_it_shows() {
        Chart chart = Chart.titled("P-A")
                .across(FLOW)
                .panel(
                        HEAD,
                        Line.through(Q, H).labelled("1450 r/min"),
                        Line.through(new double[] {40, 45}, new double[] {8, 6}).extended(true),
                        Points.at(20, 14).labelled("duty"))
                .caption("Pure affinity.")
                .build();
        assertEquals(
                "P-A. Head in m (6 to 16) against Flow in m³/h (0 to 45): line 1450 r/min; line continued beyond its"
                        + " data; point duty at 20, 14. Pure affinity.",
                chart.altText());
    }

    @Test
    void escapes_what_its_names_contain() throws Exception {
        String nasty = "<script>alert('x')</script> & \"quoted\" \u0007";
        Chart chart = Chart.titled(nasty)
                .across(Axis.of(nasty, nasty))
                .panel(
                        Axis.of(nasty, ""),
                        Line.through(Q, H).labelled(nasty),
                        ContourLines.of(nasty).with(Q, H, nasty))
                .caption(nasty)
                .build();
        String svg = chart.toSvg(800);
        assertFalse(svg.contains("<script"));
        assertEquals(
                nasty.replace('\u0007', ' '),
                parse(svg).getElementsByTagName("title").item(0).getTextContent());
    }

    @Test
    void is_the_same_to_the_byte_each_time() {
        for (int width : new int[] {400, 800}) {
            assertEquals(
                    new PumpLikeChart(3).chart().toSvg(width),
                    new PumpLikeChart(3).chart().toSvg(width));
            assertArrayEquals(
                    new PumpLikeChart(3).chart().toPng(width),
                    new PumpLikeChart(3).chart().toPng(width));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 800, 1600})
    void stays_below_200_kilobytes_as_svg(int width) {
        for (int seed = 0; seed < 20; seed++) {
            String svg = new PumpLikeChart(seed).chart().toSvg(width);
            assertTrue(svg.getBytes(StandardCharsets.UTF_8).length < 200_000);
        }
    }

    @ParameterizedTest
    @CsvSource({"400, 1", "800, 1", "800, 2", "1600, 1"})
    void has_the_size_that_was_asked_for_as_png(int width, double scale) throws IOException {
        Chart chart = new PumpLikeChart(7).chart();
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(chart.toPng(width, scale)));
        assertEquals(width * scale, image.getWidth());
        assertEquals(chart.layout(width).height() * scale, image.getHeight());
    }

    /**
     * The line lies on the frame's diagonal, by its choice of axes; a pixel on it lacks red, one beside it is white.
     */
    @Test
    void draws_a_line_where_its_values_stand() throws IOException {
        Chart chart = Chart.titled("")
                .across(Axis.of("x", "").from(0).to(1))
                .panel(Axis.of("y", "").from(0).to(1), Line.through(new double[] {0, 1}, new double[] {0, 1}))
                .build();
        var frame = chart.layout(800).frames().get(0);
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(chart.toPng(800)));
        for (double share : new double[] {0.13, 0.37, 0.73}) {
            int x = (int) Math.round(frame.x() + share * frame.width());
            int y = (int) Math.round(frame.bottom() - share * frame.height());
            assertTrue((image.getRGB(x, y) >> 16 & 0xFF) < 0x90);
            assertEquals(0xFFFFFF, image.getRGB(x, y - 12) & 0xFFFFFF);
        }
    }

    @Test
    void leaves_an_open_contour_open() throws Exception {
        var arc = Contours.of((x, y) -> Math.hypot(x, y), new Grid(0, 1, 0, 1, 20), 0.5)
                .get(0);
        var ring = Contours.of((x, y) -> Math.hypot(x - 0.5, y - 0.5), new Grid(0, 1, 0, 1, 20), 0.3)
                .get(0);
        ContourLines lines = ContourLines.of("").with(arc, "50").with(ring, "30");
        assertEquals(arc.size(), lines.lines().get(0).track().size());
        var closed = lines.lines().get(1).track();
        assertEquals(ring.size() + 1, closed.size());
        assertEquals(closed.x(0), closed.x(closed.size() - 1));
        Chart chart = Chart.titled("").across(FLOW).panel(HEAD, lines).build();
        for (String line : chart.toSvg(800).split("\n")) {
            assertFalse(line.contains("stroke=") && line.contains("z"), line);
        }
    }

    @Test
    void shares_its_axis_across_between_panels() {
        Chart chart = Chart.titled("P-A")
                .across(FLOW)
                .panel(HEAD, Line.through(Q, H))
                .panel(Axis.of("Shaft power", "kW"), Line.through(Q, new double[] {1, 2, 2.5}))
                .panel(Axis.of("Efficiency", "%"), Line.through(Q, new double[] {0, 70, 60}))
                .build();
        Layout layout = chart.layout(800);
        assertEquals(3, layout.frames().size());
        for (int i = 1; i < 3; i++) {
            assertEquals(layout.frames().get(0).x(), layout.frames().get(i).x());
            assertEquals(layout.frames().get(0).width(), layout.frames().get(i).width());
            assertTrue(layout.frames().get(i).y() > layout.frames().get(i - 1).bottom());
        }
        assertEquals(
                List.of("Head in m", "Shaft power in kW", "Efficiency in %", "Flow in m³/h"),
                texts(layout, Role.AXIS_TITLE));
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 800, 1600})
    void names_each_bar_and_prints_its_value(int width) {
        List<String> names = List.of("Constant speed, throttled", "Fixed design speed of a rather long explanation");
        Chart chart = Chart.titled("Energy in a year")
                .across(Axis.of("Energy", "kWh"))
                .bars(Bars.of(names)
                        .with("wire", Ink.BLUE, List.of(21_480.0, 6710.4))
                        .with("shaft", Ink.ORANGE, List.of(18_000.0, -120.0)))
                .build();
        Layout layout = chart.layout(width);
        assertEquals(String.join(" ", names), String.join(" ", texts(layout, Role.BAR_NAME)));
        assertEquals(List.of("21\u2009480", "18\u2009000", "6710", "−120"), texts(layout, Role.BAR_VALUE));
        assertEquals(List.of("wire", "shaft"), texts(layout, Role.LEGEND));
        List<Layout.Text> all = layout.texts();
        for (int i = 0; i < all.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertFalse(all.get(i).box().crosses(all.get(j).box()), all.get(i) + " and " + all.get(j));
            }
        }
    }

    @Test
    void sums_stacked_bars_at_their_end() {
        Chart chart = Chart.titled("")
                .across(Axis.of("Energy", "kWh"))
                .bars(Bars.of(List.of("a"))
                        .with("pump", Ink.BLUE, List.of(3.0))
                        .with("motor", Ink.ORANGE, List.of(1.5))
                        .asStacked())
                .build();
        assertEquals(List.of("4.5"), texts(chart.layout(800), Role.BAR_VALUE));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "5, 5",
        "-3, -3",
        "1e-9, 2e-9",
        "1e9, 2e9",
        "-1e99, 1e99",
        "1e-300, 1e-299",
        "1000000, 1000000.001",
        "5, 5.0000000000001",
        "1e100, 1e100"
    })
    void draws_whatever_values_have_a_place(double low, double high) throws Exception {
        Chart lines = Chart.titled("t")
                .across(FLOW)
                .panel(
                        HEAD,
                        Line.through(new double[] {low, high}, new double[] {high, low})
                                .labelled("a"))
                .panel(HEAD, Points.at(low, high).labelled("b"))
                .build();
        Chart bars = Chart.titled("t")
                .across(FLOW)
                .bars(Bars.of(List.of("a", "b")).with("", Ink.BLUE, List.of(low, high)))
                .build();
        for (Chart chart : List.of(lines, bars)) {
            for (int width : new int[] {400, 1600}) {
                String svg = chart.toSvg(width);
                parse(svg);
                assertFalse(svg.contains("NaN") || svg.contains("Infinity"));
                assertNotNull(ImageIO.read(new ByteArrayInputStream(chart.toPng(width))));
            }
        }
    }

    @Test
    void draws_what_lies_outside_its_axes_not_at_all() {
        Chart chart = Chart.titled("")
                .across(FLOW.from(0).to(10))
                .panel(
                        HEAD.from(0).to(10),
                        Line.through(Q, new double[] {50, 60, 70}).labelled("far away"))
                .build();
        assertEquals(List.of("far away"), texts(chart.layout(800), Role.LEGEND));
        assertFalse(chart.toSvg(800).contains("stroke=\"#0072b2\" d"));
    }

    /** Rounding must not cut away what lies right on the frame: ends of thirds and sevenths do not come out even. */
    @Test
    void draws_what_lies_right_on_its_frame() {
        for (double end : new double[] {1.0 / 3, 4, 7.0 / 9, 1e6 / 7}) {
            for (int width : new int[] {400, 555, 800, 1111}) {
                Chart chart = Chart.titled("")
                        .across(FLOW.from(0).to(end))
                        .panel(
                                HEAD.from(0).to(end),
                                Reference.atHeight(end, "").in(Ink.VERMILION),
                                Reference.standingAt(end, "").in(Ink.GREEN))
                        .build();
                assertTrue(chart.toSvg(width).contains("#d55e00"));
                assertTrue(chart.toSvg(width).contains("#009e73"));
            }
        }
    }

    @Test
    void draws_a_line_a_strip_and_an_area_of_no_size() throws Exception {
        Chart chart = Chart.titled("")
                .across(FLOW)
                .panel(
                        HEAD,
                        Line.through(new double[] {3}, new double[] {4}).labelled("a"),
                        Line.through(new double[] {3, 3}, new double[] {4, 4}).labelled("b"),
                        Area.rectangle(2, 2, 1, 1).labelled("c"),
                        Area.rectangle(2, 3, 1, 1).asHatched().labelled("d"),
                        ContourLines.of("").with(new double[] {1}, new double[] {1}, "e"),
                        Reference.standingAt(3, "f"))
                .build();
        String words = chart.layout(400).texts().stream().map(Layout.Text::text).collect(Collectors.joining(" "));
        for (String label : List.of("a", "b", "c", "d", "e", "f")) {
            assertTrue(words.contains(label), label);
        }
        parse(chart.toSvg(400));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1e101})
    void refuses_values_that_have_no_place_on_an_axis(double value) {
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> Points.at(value, 1));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> Line.of(x -> value, 0, 1));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> Reference.atHeight(value, "limit"));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> FLOW.to(value));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> FLOW.from(value));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> Bars.of(List.of("a")).with("", Ink.BLUE, List.of(value)));
    }

    @Test
    void refuses_lists_that_do_not_match() {
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> Line.through(Q, new double[] {1}));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> Line.through(new double[0], new double[0]));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> Bars.of(List.of("a", "b")).with("", Ink.BLUE, List.of(1.0)));
        refusal(ChartProblem.UNDRAWABLE_VALUE, () -> FLOW.from(2).to(2));
    }

    @Test
    void refuses_to_show_nothing() {
        refusal(ChartProblem.NOTHING_TO_DRAW, () -> Chart.titled("x").build());
        refusal(
                ChartProblem.NOTHING_TO_DRAW,
                () -> Chart.titled("x").panel(HEAD).build());
        refusal(
                ChartProblem.NOTHING_TO_DRAW,
                () -> Chart.titled("x").bars(Bars.of(List.of())).build());
    }

    @Test
    void refuses_a_size_that_its_style_is_not_made_for() {
        Chart chart = new PumpLikeChart(1).chart();
        refusal(ChartProblem.CHART_SIZE_OUT_OF_RANGE, () -> chart.toSvg(399));
        refusal(ChartProblem.CHART_SIZE_OUT_OF_RANGE, () -> chart.layout(1601));
        refusal(ChartProblem.CHART_SIZE_OUT_OF_RANGE, () -> chart.toPng(800, 0.5));
        refusal(ChartProblem.CHART_SIZE_OUT_OF_RANGE, () -> chart.toPng(800, Double.NaN));
    }

    @Test
    void draws_dashed_what_goes_beyond_its_data_and_says_so() {
        Chart chart = Chart.titled("")
                .across(FLOW)
                .panel(HEAD, Line.through(Q, H).extended(true).in(Ink.GREEN).broken(Dash.DASHED))
                .build();
        assertTrue(Pattern.compile("stroke=\"#009e73\"[^>]*stroke-dasharray")
                .matcher(chart.toSvg(800))
                .find());
        assertEquals(List.of("dashed: continued beyond the data"), texts(chart.layout(800), Role.LEGEND));
    }

    private static List<String> texts(Layout layout, Role role) {
        return layout.texts().stream()
                .filter(text -> text.role() == role)
                .map(Layout.Text::text)
                .toList();
    }

    private static void refusal(ChartProblem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }

    private static Document parse(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }
}

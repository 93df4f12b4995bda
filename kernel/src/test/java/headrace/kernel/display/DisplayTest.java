package headrace.kernel.display;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.Fact;
import headrace.report.Block.Facts;
import headrace.report.Block.TableBlock;
import headrace.report.Block.TextBlock;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Head;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.knowm.xchart.XYChart;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class DisplayTest {
    private static final String HOSTILE = "<script>alert('a & b')</script> \"quoted\" </td>";

    private static final Table HEADS = Table.of(
                    "Heads at <three> flows", Column.in("flow", "m³/h"), Column.in("head", "m"), Column.text("note"))
            .row(Flow.cubicMetresPerHour(20), Head.metres(18), "a & b")
            .row(Flow.cubicMetresPerHour(40), Head.metres(16), "")
            .row(Flow.cubicMetresPerHour(60), Head.metres(12), HOSTILE);

    private static final Chart CHART = Chart.titled("Hours <by> flow")
            .across(Axis.of("Time", "h").from(0))
            .bars(Bars.of(List.of("25 %", "50 %")).with("", Ink.SKY, List.of(3000.0, 4000.0)))
            .build();

    private static final Shown SHOWN = new Shown(
            "Verdict of " + HOSTILE,
            List.of("It passes.", "By a margin of 3 points " + HOSTILE),
            List.of(
                    new Facts(List.of(new Fact("speed " + HOSTILE, "1450 rpm"))),
                    new TableBlock(HEADS),
                    new ChartBlock(CHART),
                    new TextBlock("Basis", List.of("heron-65.csv " + HOSTILE))));

    @Test
    void a_plot_that_a_script_drew_itself_is_shown_as_a_picture() {
        XYChart plot = new XYChart(400, 300);
        plot.setTitle("Readings");
        plot.addSeries("a", new double[] {1, 2, 3}, new double[] {2, 1, 4});
        MimeBundle bundle = Display.of(plot);
        assertEquals("Readings: a plot of 1 series", bundle.text());
        byte[] png = Base64.getDecoder().decode(bundle.forms().get("image/png"));
        assertEquals("PNG", new String(png, 1, 3, StandardCharsets.US_ASCII));
    }

    @Test
    void a_result_is_shown_as_text_page_and_picture() {
        MimeBundle bundle = Display.of(SHOWN);
        assertEquals(
                Set.of("text/plain", "text/html", "image/svg+xml"),
                bundle.forms().keySet());
        assertEquals(SHOWN.toText(), bundle.text());
        assertTrue(
                bundle.forms().get("image/svg+xml").startsWith("<svg"),
                bundle.forms().get("image/svg+xml"));
    }

    @Test
    void the_text_fits_a_hundred_columns() {
        assertTrue(Display.of(SHOWN).text().lines().allMatch(line -> line.length() <= 100));
    }

    @Test
    void the_page_is_well_formed_and_holds_every_text_in_order() throws Exception {
        Document page = parsed(Display.of(SHOWN).forms().get("text/html"));
        String text = page.getDocumentElement().getTextContent();
        List<String> parts = List.of(
                "Verdict of",
                "It passes.",
                "By a margin",
                "speed",
                "1450 rpm",
                "Heads at <three> flows",
                "flow",
                "m³/h",
                "20",
                "a & b",
                "Basis",
                "heron-65.csv");
        int from = 0;
        for (String part : parts) {
            from = text.indexOf(part, from);
            assertTrue(from >= 0, part);
        }
    }

    @Test
    void no_text_of_a_result_becomes_markup() throws Exception {
        String html = Display.of(SHOWN).forms().get("text/html");
        assertFalse(html.contains("<script"));
        assertEquals(0, parsed(html).getElementsByTagName("script").getLength());
    }

    @Test
    void a_table_says_which_cells_head_it_and_aligns_its_numbers() throws Exception {
        Document page = parsed(Display.of(HEADS).forms().get("text/html"));
        assertEquals(3, page.getElementsByTagName("th").getLength());
        assertEquals(
                "col",
                page.getElementsByTagName("th")
                        .item(0)
                        .getAttributes()
                        .getNamedItem("scope")
                        .getNodeValue());
        assertEquals(
                "number",
                page.getElementsByTagName("td")
                        .item(0)
                        .getAttributes()
                        .getNamedItem("class")
                        .getNodeValue());
        assertEquals(1, page.getElementsByTagName("caption").getLength());
    }

    @Test
    void nothing_is_loaded_from_outside() {
        String html = Display.of(SHOWN).forms().get("text/html").replace("src=\"data:image/svg+xml;base64,", "");
        for (String way : List.of("http:", "https:", "src=", "@import", "url(", "<link", "<iframe")) {
            assertFalse(html.contains(way), way);
        }
    }

    @Test
    void a_chart_alone_is_a_picture_with_its_text_beside() {
        MimeBundle bundle = Display.of(CHART);
        assertEquals(Set.of("text/plain", "image/svg+xml"), bundle.forms().keySet());
        assertEquals(CHART.altText(), bundle.text());
    }

    @Test
    void a_list_of_results_shows_each_in_turn() {
        MimeBundle bundle = Display.of(List.of(HEADS, SHOWN));
        assertTrue(bundle.text().indexOf("Heads at") < bundle.text().indexOf("Verdict of"));
        assertTrue(bundle.forms().containsKey("text/html"));
    }

    @Test
    void a_map_of_results_shows_each_under_its_name() {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("first", HEADS);
        map.put("second", SHOWN);
        String text = Display.of(map).text();
        assertTrue(text.startsWith("first: Heads at"), text);
        assertTrue(text.contains("second: Verdict of"), text);
    }

    @Test
    void a_list_of_anything_else_is_text() {
        assertEquals(MimeBundle.plain("[1, HEADS]"), Display.of(List.of(1, "HEADS")));
        assertEquals(MimeBundle.plain("[]"), Display.of(List.of()));
        assertEquals(MimeBundle.plain("[:]"), Display.of(Map.of()));
        assertEquals(MimeBundle.plain("[1.5, 2.5]"), Display.of(new double[] {1.5, 2.5}));
        assertEquals(
                MimeBundle.plain("[[a:null], [x]]"),
                Display.of(Arrays.asList(Collections.singletonMap("a", null), new String[] {"x"})));
        assertEquals(MimeBundle.plain("20 m³/h"), Display.of(Flow.cubicMetresPerHour(20)));
        assertEquals(MimeBundle.plain("null"), Display.of(null));
    }

    @Test
    void a_bundle_is_shown_as_it_is() {
        MimeBundle bundle = new MimeBundle(Map.of("text/plain", "a", "text/markdown", "*a*"));
        assertEquals(bundle, Display.of(bundle));
    }

    @Test
    void a_long_text_is_cut_and_a_long_list_not_even_written_out() {
        assertTrue(Display.of("🙂".repeat(50_000)).text().length() < 20_100);
        List<Integer> endless = Collections.nCopies(Integer.MAX_VALUE, 7);
        assertTrue(Display.of(endless).text().length() < 20_100);
    }

    @Test
    void a_list_within_itself_is_shown_so_far() {
        List<Object> self = new ArrayList<>();
        self.add(self);
        assertTrue(Display.of(self).text().startsWith("[[["));
    }

    @Test
    void a_value_whose_text_fails_says_what_it_is_and_how_it_failed() {
        Object broken = new Object() {
            @Override
            public String toString() {
                throw new IllegalStateException("no text");
            }
        };
        assertTrue(Display.of(broken).text().endsWith("whose text failed with IllegalStateException: no text)"));
        assertTrue(Display.of(List.of(1, broken)).text().contains("IllegalStateException"));
    }

    @Test
    void text_is_escaped_in_elements_and_attributes_and_forbidden_characters_replaced() {
        assertEquals("&lt;a b=&quot;c&quot; d=&#39;e&#39;&gt; &amp;amp;", Html.escape("<a b=\"c\" d='e'> &amp;"));
        assertEquals("a\uFFFDb\n\t\uFFFD\uFFFD🙂", Html.escape("a\u0000b\n\t\u0085\uD800🙂"));
    }

    private static Document parsed(String html) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(html)));
    }

    @Test
    void results_show_themselves_between_other_values_in_maps_arrays_and_optionals() {
        Map<String, Object> mixed = new LinkedHashMap<>();
        mixed.put("flow", Flow.cubicMetresPerHour(52));
        mixed.put("heads", HEADS);
        mixed.put("nothing", null);
        mixed.put("within", Map.of("chart", Optional.of(CHART), "share", 0.5));
        String text = Display.of(mixed).text();
        for (String part : List.of(
                "flow: 52 m³/h",
                "heads: Heads at <three> flows",
                "nothing: null",
                "within: chart: Hours <by> flow",
                "within: share: 0.5")) {
            assertTrue(text.contains(part), part + " in " + text);
        }
        assertEquals(Display.of(HEADS).text(), Display.of(Optional.of(HEADS)).text());
        assertEquals(2, Display.of(new Object[] {HEADS, 5}).shown().size());
    }

    @Test
    void what_holds_no_result_shows_its_text() {
        assertEquals("[1, 2, 3]", Display.of(List.of(1, 2, 3)).text());
        assertEquals("[:]", Display.of(Map.of()).text());
        assertEquals("none", Display.of(Optional.empty()).text());
        assertEquals(
                "[52 m³/h, none]",
                Display.of(List.of(Optional.of(Flow.cubicMetresPerHour(52)), Optional.empty()))
                        .text());
        assertEquals(Set.of("text/plain"), Display.of(List.of(1)).forms().keySet());
    }

    @Test
    void of_very_many_results_the_first_are_shown_and_the_rest_are_counted() {
        MimeBundle bundle = Display.of(Collections.nCopies(100, CHART));
        assertTrue(bundle.shown().size() < 30, bundle.shown().size() + " shown");
        int charts = bundle.shown().size() - 1;
        assertTrue(bundle.text().endsWith("… and " + (100 - charts) + " more; show them one by one, or make a table"));
    }

    @Test
    void a_list_that_holds_itself_is_shown_as_far_as_it_goes() {
        List<Object> ring = new ArrayList<>(List.of(HEADS));
        ring.add(ring);
        assertTrue(Display.of(ring).text().contains("Heads at <three> flows"));
    }
}

package headrace.kernel.headless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Line;
import headrace.kernel.display.Display;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.CellOutput;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.report.Shown;
import headrace.report.whatif.Control;
import headrace.report.whatif.Preset;
import headrace.report.whatif.WhatIf;
import headrace.units.Ratio;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.zip.GZIPInputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class WhatIfPageTest {
    private static final WhatIf CHART = WhatIf.of(
            List.of(Control.slider("minimum head", Ratio.percent(20), Ratio.percent(60), 9, Ratio.percent(35))),
            values -> Chart.titled("At " + values.get(0))
                    .across(Axis.of("Flow", "m³/h"))
                    .panel(Axis.of("Head", "m"), Line.through(new double[] {0, 1}, new double[] {1, 2}))
                    .build());

    @Test
    void a_page_holds_the_controls_and_every_frame() throws IOException {
        String page = page(CHART);
        assertTrue(page.contains("type=\"range\" min=\"0\" step=\"1\" max=\"8\" value=\"3\""), page);
        assertTrue(page.contains("data-labels=\"20 %|25 %|30 %|35 %|40 %|45 %|50 %|55 %|60 %\""), page);
        Matcher frame = Pattern.compile(
                        "data-at=\"(\\d)\" data-as=\"alone\"><i data-name=\"\" data-picture=\"([^\"]+)\"")
                .matcher(page);
        for (int at = 0; at < 9; at++) {
            assertTrue(frame.find(), "frame " + at);
            assertEquals(at, Integer.parseInt(frame.group(1)));
            assertTrue(text(page, frame.group(2)).contains("At " + (20 + 5 * at) + " %"), "frame " + at);
        }
        assertFalse(frame.find());
    }

    /**
     * Only a title is different from frame to frame: a few hundred characters, where a drawing has some ten thousand.
     */
    @Test
    void what_is_alike_in_all_frames_stands_in_the_page_once() {
        String page = page(CHART);
        Matcher begin =
                Pattern.compile("src=\"data:image/svg\\+xml;base64,([^\"]+)\"").matcher(page);
        assertTrue(begin.find(), page);
        assertTrue(page.length() < 3 * begin.group(1).length() + 60_000, page.length() + " characters");
    }

    /** A page runs what its policy knows by its digest, which is computed here anew from what stands in the page. */
    @Test
    void a_page_that_moves_allows_itself_the_one_script_that_stands_in_it() throws NoSuchAlgorithmException {
        String page = page(CHART);
        Matcher script =
                Pattern.compile("<script>(.*?)</script>", Pattern.DOTALL).matcher(page);
        assertTrue(script.find());
        byte[] hash =
                MessageDigest.getInstance("SHA-256").digest(script.group(1).getBytes(StandardCharsets.UTF_8));
        assertTrue(page.contains("script-src 'sha256-" + Base64.getEncoder().encodeToString(hash) + "'"), page);
        assertFalse(script.find());
    }

    @Test
    void presets_are_buttons_that_know_their_positions() {
        WhatIf whatIf = WhatIf.of(
                        List.of(
                                Control.slider("load", Ratio.percent(20), Ratio.percent(60), 5, Ratio.percent(40)),
                                Control.onOff("warm", false)),
                        values -> "at " + values)
                .withPresets(List.of(new Preset("design day", List.of(4, Preset.STAYS))));
        String page = page(whatIf);
        assertTrue(page.contains("<button type=\"button\" data-at=\"2 0\">Back to the start</button>"), page);
        assertTrue(page.contains("<button type=\"button\" data-at=\"4 -\">Design day</button>"), page);
    }

    @Test
    void several_results_stand_one_below_the_other_until_the_script_puts_them_behind_tabs() throws IOException {
        Shown verdict = Shown.line("passes");
        WhatIf whatIf = WhatIf.of(List.of(Control.onOff("warm", false)), values -> {
            Map<String, Object> parts = new LinkedHashMap<>();
            parts.put("verdict", verdict);
            parts.put("drawn", new BufferedImage(3, 2, BufferedImage.TYPE_INT_RGB));
            return parts;
        });
        String page = page(whatIf);
        assertTrue(page.contains("<div class=\"drawn\" data-as=\"tabs\">"), page);
        assertTrue(page.contains("<p class=\"name\">verdict</p>"), page);
        Matcher bitmap =
                Pattern.compile("data-name=\"drawn\" data-bitmap=\"([^\"]+)\"").matcher(page);
        assertTrue(bitmap.find(), page);
        BufferedImage image =
                ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(text(page, bitmap.group(1)))));
        assertEquals(3, image.getWidth());
    }

    /** A pump's map is a heavy chart; with three of them moved, a page is to stay below 2 MB. */
    @Test
    void a_page_with_three_heavy_what_ifs_stays_below_two_megabytes() {
        WhatIf heavy = WhatIf.of(
                List.of(Control.slider("a", 0.0, 1, 11, 0.5), Control.slider("b", 0.0, 1, 11, 0.5)),
                WhatIfPageTest::noise);
        assertTrue(page(heavy).length() < 2_000_000 / 3, page(heavy).length() + " characters");
    }

    /** A chart of which nearly all is different at each position. */
    private static Chart noise(List<Object> at) {
        Random random = new Random(at.hashCode());
        Line[] lines = new Line[8];
        for (int i = 0; i < lines.length; i++) {
            double[] x = IntStream.range(0, 200).asDoubleStream().toArray();
            lines[i] = Line.through(x, random.doubles(200).toArray());
        }
        return Chart.titled("Noise")
                .across(Axis.of("Flow", "m³/h"))
                .panel(Axis.of("Head", "m"), lines)
                .build();
    }

    @Test
    void a_button_that_would_send_something_does_not_reach_the_page() {
        String html = "<div class=\"headrace-whatif\"><button type=\"submit\">a</button><button>b</button></div>";
        assertFalse(page(new MimeBundle(Map.of("text/plain", "x", "text/html", html)))
                .contains("<button"));
    }

    @Test
    void a_page_that_does_not_move_runs_nothing() {
        assertFalse(page(Display.of(Ratio.percent(3))).contains("script"));
    }

    @Test
    void a_script_that_stands_in_a_result_does_not_reach_the_page() {
        String html = "<div class=\"headrace-whatif\"><input type=\"text\"/><script>evil()</script>"
                + "<pre data-at=\"0\" data-picture=\"&quot;onload=evil()\" data-lines=\"evil()\" onclick=\"evil()\">x</pre></div>";
        String page = page(new MimeBundle(Map.of("text/plain", "x", "text/html", html)));
        assertFalse(page.contains("evil"), page);
        assertFalse(page.contains("<input"), page);
    }

    @Test
    void many_heavy_frames_are_thinned_and_the_page_says_so() {
        WhatIf many = WhatIf.of(
                List.of(Control.slider("a", 0.0, 1, 41, 0.5), Control.slider("b", 0.0, 1, 41, 0.5)),
                values -> "at " + values);
        String page = page(many);
        int frames = page.split("hidden=\"hidden\" data-at=", -1).length - 1;
        assertTrue(frames > 60 && frames <= WhatIf.MOST_FRAMES, frames + " frames");
        assertTrue(page.contains("Computed ahead at " + frames + " positions"), page);
    }

    /** Returns a text of a page from the numbers of its lines. */
    private static String text(String page, String ranges) throws IOException {
        Matcher packed = Pattern.compile("data-lines=\"([^\"]+)\"").matcher(page);
        assertTrue(packed.find(), page);
        byte[] zipped = Base64.getDecoder().decode(packed.group(1));
        try (GZIPInputStream zip = new GZIPInputStream(new ByteArrayInputStream(zipped))) {
            List<String> lines = new String(zip.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            return Pattern.compile(" ")
                    .splitAsStream(ranges)
                    .map(range -> range.split("-"))
                    .flatMap(ends ->
                            lines
                                    .subList(Integer.parseInt(ends[0]), Integer.parseInt(ends[ends.length - 1]) + 1)
                                    .stream())
                    .collect(Collectors.joining("\n"));
        }
    }

    private static String page(WhatIf whatIf) {
        return page(Display.of(whatIf));
    }

    private static String page(MimeBundle bundle) {
        Cell cell = Cell.code("1").ran(1, List.of(new CellOutput.Result(bundle, 1)));
        Edition edition = new Edition("1", "17", "5", LocalDate.of(2026, 3, 14));
        return Page.of(
                new Notebook(Fields.NONE, List.of(cell)), new PageFacts("a.ipynb", "abc", Optional.empty(), edition));
    }
}

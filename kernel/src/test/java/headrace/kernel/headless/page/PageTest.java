package headrace.kernel.headless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.display.Html;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.CellOutput;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PageTest {
    private static final Edition EDITION = new Edition("1.2.3", "17.0.9", "5.0.1", LocalDate.of(2026, 3, 14));

    /** Breaks out of text, of both kinds of quotes and of a comment, and loads. */
    private static final String EVIL =
            "\"'>--><script>alert(1)</script><img src=\"https://example.org/x.png\" onerror='alert(1)'>]]>&lt;";

    private static final String SVG = "<svg xmlns=\"http://www.w3.org/2000/svg\" aria-label=\"Head over flow\">"
            + "<script>alert(1)</script><path d=\"M0 0h9\"/></svg>";

    private static final Pattern LOADS_OR_RUNS =
            Pattern.compile("(?i)</?(?:link|script|iframe|object|embed|base|form|svg|video|audio)\\b");

    private static final Pattern ATTRIBUTE = Pattern.compile("([-:\\w]+)=\"([^\"]*)\"");

    private static final Pattern TAG = Pattern.compile("<[a-zA-Z/][^>]*>");

    @Test
    void the_title_is_the_first_heading_and_stands_once() {
        String page = page(Cell.markdown("# Half flow\n\nText"), Cell.markdown("# Other"));
        assertTrue(page.contains("<title>Half flow</title>"), page);
        assertTrue(page.contains("<h1>Half flow</h1>"), page);
        assertEquals(3, page.split("Half flow", -1).length, page);
    }

    @Test
    void without_a_heading_the_title_is_the_name_of_the_file_and_there_are_no_contents() {
        String page = page(Cell.code("1"));
        assertTrue(page.contains("<title>run &amp; see.ipynb</title>"), page);
        assertFalse(page.contains("<nav"), page);
    }

    @Test
    void the_contents_lead_to_the_headings() {
        String page = page(Cell.markdown("# Title"), Cell.code("1"), Cell.markdown("## One\n### Two\n#### Three"));
        assertTrue(page.contains("<li class=\"level-2\"><a href=\"#part-3-1\">One</a></li>"), page);
        assertTrue(page.contains("<h2 id=\"part-3-1\">One</h2>"), page);
        assertTrue(page.contains("<li class=\"level-3\"><a href=\"#part-3-2\">Two</a></li>"), page);
        assertFalse(page.contains(">Three</a>"), page);
    }

    @Test
    void the_page_forbids_itself_scripts_and_loads() {
        assertTrue(
                page().contains("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';"), page());
    }

    @Test
    void the_foot_says_what_the_page_rests_on_and_warns() {
        String page = page();
        for (String part : List.of(
                "SHA-256 abc123",
                "Headrace 1.2.3, JDK 17.0.9, Groovy 5.0.1",
                "14 March 2026",
                "engineering estimates",
                "not certified",
                "licensed practice")) {
            assertTrue(page.replaceAll("\\s+", " ").contains(part), part);
        }
    }

    @Test
    void the_foot_names_what_the_results_rest_on_once() {
        String html = "<section class=\"basis\"><h4>Basis</h4><ul><li>heron.csv (SHA-256 12ab)</li></ul></section>";
        CellOutput result = new CellOutput.Result(new MimeBundle(Map.of("text/plain", "p", "text/html", html)), 1);
        String page =
                page(Cell.code("1").ran(1, List.of(result)), Cell.code("2").ran(2, List.of(result)));
        assertEquals(3, page.split("heron.csv", -1).length, page);
        assertTrue(page.substring(page.indexOf("<footer>")).contains("<li>heron.csv (SHA-256 12ab)</li>"), page);
    }

    @Test
    void a_run_that_did_not_come_to_its_end_says_so_at_the_top() {
        Notebook notebook = new Notebook(Fields.NONE, List.of(Cell.code("1")));
        String page = Page.of(notebook, new PageFacts("a.ipynb", "abc", Optional.of("Cell 1 failed <b>."), EDITION));
        assertTrue(page.contains("<strong>Not complete.</strong> Cell 1 failed &lt;b&gt;."), page);
        assertTrue(page.contains("Script, not run"), page);
    }

    @Test
    void the_richest_safe_form_is_shown() {
        assertTrue(shown(Map.of("text/plain", "p", "text/html", "<table></table>", "image/svg+xml", SVG))
                .contains("<table></table>"));
        assertTrue(shown(Map.of("text/plain", "p", "text/html", "<table>", "image/svg+xml", SVG))
                .contains("data:image/svg+xml"));
        assertTrue(shown(Map.of("text/plain", "p", "image/svg+xml", "<p", "image/png", "iVBO"))
                .contains("data:image/png"));
        assertTrue(shown(Map.of("text/plain", "16 m", "image/png", "\"><script>"))
                .contains("<pre class=\"value\">16 m</pre>"));
        assertTrue(shown(Map.of("text/plain", "16 m")).contains("<pre class=\"value\">16 m</pre>"));
    }

    @Test
    void every_picture_has_words_for_those_who_cannot_see_it() {
        assertTrue(shown(Map.of("text/plain", "a chart", "image/svg+xml", SVG)).contains("alt=\"Head over flow\""));
        assertTrue(shown(Map.of("text/plain", "a chart", "image/png", "iVBO")).contains("alt=\"a chart\""));
    }

    @Test
    void printed_colour_commands_do_not_reach_the_page() {
        String page =
                page(Cell.code("1").ran(1, List.of(new CellOutput.Stream("stdout", "\u001b[1;31mred\u001b[0m\u0007"))));
        assertTrue(page.contains(">red\uFFFD</pre>"), page);
    }

    @Test
    void nothing_that_comes_from_outside_can_run_or_load_wherever_it_stands() {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.markdown("# " + EVIL));
        cells.add(Cell.markdown("[a](" + EVIL + ") ![b](" + EVIL + ") `" + EVIL + "`\n\n" + EVIL
                + "\n\n| " + EVIL + " |\n|---|\n| x |\n\n```" + EVIL + "\n" + EVIL
                + "\n```\n\n[x]: https://example.org '"
                + EVIL + "'\n[x]\n"));
        cells.add(new Cell.Raw("raw", Fields.NONE, EVIL, Fields.NONE));
        List<CellOutput> outputs = new ArrayList<>();
        for (String type : List.of(
                "text/html",
                "text/markdown",
                "text/latex",
                "image/svg+xml",
                "image/png",
                "image/jpeg",
                "application/javascript",
                "application/json")) {
            outputs.add(new CellOutput.Shown(new MimeBundle(Map.of("text/plain", EVIL, type, EVIL))));
        }
        String attribute = Html.escape(EVIL);
        outputs.add(new CellOutput.Result(
                new MimeBundle(Map.of(
                        "text/plain",
                        EVIL,
                        "text/html",
                        "<p title=\"" + attribute + "\" onclick=\"" + attribute + "\">" + attribute + "</p>")),
                1));
        outputs.add(new CellOutput.Result(
                new MimeBundle(Map.of("text/plain", EVIL, "image/svg+xml", SVG.replace("Head over flow", attribute))),
                1));
        outputs.add(new CellOutput.Stream("stderr", EVIL));
        outputs.add(new CellOutput.Failure(EVIL, EVIL, List.of(EVIL)));
        cells.add(Cell.code("x = '''" + EVIL + "''' // " + EVIL).ran(1, outputs));
        Notebook notebook = new Notebook(Fields.NONE, cells);
        String page = Page.of(
                notebook, new PageFacts(EVIL, EVIL, Optional.of(EVIL), new Edition(EVIL, EVIL, EVIL, EDITION.day())));
        assertHarmless(page);
    }

    @Test
    void no_sequence_of_dangerous_pieces_can_run_or_load() {
        List<String> pieces = List.of(
                "<script>",
                "</script>",
                "\"",
                "'",
                ">",
                "<",
                "![",
                "[a](",
                "](",
                ")",
                "javascript:alert(1)",
                "http://x.example",
                "data:text/html,x",
                "`",
                "```\n",
                "\n\n",
                "\n| a |\n|---|\n| ",
                "\n# ",
                "&lt;",
                "&#60;",
                "<!--",
                "-->",
                "<a href=",
                "onclick=x ",
                "<svg onload=x>",
                "<img src=x>",
                "\n[r]: ",
                "[r]",
                "attachment:dot.png",
                "<https://x.example>",
                "\\",
                "\n> ",
                "\n- ",
                "</pre>",
                "</details>",
                "</style>",
                "<![CDATA[",
                "\u0000",
                "\ud800");
        for (int seed = 0; seed < 1_000; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder();
            for (int i = random.nextInt(30); i >= 0; i--) {
                text.append(pieces.get(random.nextInt(pieces.size())));
            }
            String any = text.toString();
            assertHarmless(page(
                    Cell.markdown(any),
                    Cell.code(any)
                            .ran(
                                    1,
                                    List.of(
                                            new CellOutput.Stream("stdout", any),
                                            new CellOutput.Shown(
                                                    new MimeBundle(Map.of("text/plain", any, "text/html", any))),
                                            new CellOutput.Failure(any, any, List.of(any))))));
        }
    }

    private static void assertHarmless(String page) {
        String style = page.substring(page.indexOf("<style>"), page.indexOf("</style>"));
        assertFalse(style.contains("@import") || style.contains("url("), "The style loads something");
        String markup = page.replace(style, "");
        for (String tag : TAG.matcher(markup).results().map(MatchResult::group).toList()) {
            assertFalse(LOADS_OR_RUNS.matcher(tag).find(), tag);
            Matcher attribute = ATTRIBUTE.matcher(tag);
            while (attribute.find()) {
                assertTrue(isHarmless(attribute.group(1).toLowerCase(Locale.ROOT), attribute.group(2)), tag);
            }
            assertFalse(ATTRIBUTE.matcher(tag).replaceAll("").contains("="), tag);
        }
        Matcher drawings =
                Pattern.compile("data:image/svg\\+xml;base64,([^\"]*)").matcher(page);
        while (drawings.find()) {
            String drawing = new String(Base64.getDecoder().decode(drawings.group(1)), StandardCharsets.UTF_8);
            assertFalse(drawing.contains("<script"), drawing);
        }
    }

    private static boolean isHarmless(String name, String value) {
        return switch (name) {
            case "src" -> value.startsWith("data:image/");
            case "href" -> value.matches("(?is)(?:https?://|mailto:|#).*");
            case "style" -> false;
            default ->
                !name.startsWith("on")
                        && !Set.of("srcset", "data", "poster", "background").contains(name);
        };
    }

    private static String shown(Map<String, String> forms) {
        return page(Cell.code("1").ran(1, List.of(new CellOutput.Result(new MimeBundle(forms), 1))));
    }

    private static String page(Cell... cells) {
        return Page.of(
                new Notebook(Fields.NONE, List.of(cells)),
                new PageFacts("run & see.ipynb", "abc123", Optional.empty(), EDITION));
    }
}

package headrace.kernel.headless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SafeMarkupTest {
    private static final String SVG =
            "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\""
                    + " aria-label=\"Head over flow\">%s</svg>";

    @Test
    void a_table_is_copied_as_it_is() {
        String table = "<table class=\"facts\"><tbody><tr><td colspan=\"2\" style=\"text-align: right\">16 m</td></tr>"
                + "</tbody></table>";
        assertEquals(Optional.of(table), html(table));
    }

    @Test
    void what_could_run_or_load_is_left_out() {
        for (String bad : List.of(
                "<script>alert(1)</script>",
                "<SCRIPT>alert(1)</SCRIPT>",
                "<style>p { background: url(https://example.org) }</style>",
                "<iframe src=\"https://example.org\"></iframe>",
                "<object data=\"x\"></object>",
                "<form action=\"https://example.org\"><input/></form>",
                "<link rel=\"stylesheet\" href=\"https://example.org\"/>",
                "<meta http-equiv=\"refresh\" content=\"0\"/>",
                "<math><script>alert(1)</script></math>")) {
            assertEquals(Optional.of("<p>a</p>"), html("<p>a</p>" + bad), bad);
        }
    }

    @Test
    void attributes_that_could_run_or_load_are_left_out() {
        for (String bad : List.of(
                "onclick=\"alert(1)\"",
                "ONCLICK=\"alert(1)\"",
                "href=\"javascript:alert(1)\"",
                "href=\" java&#10;script:alert(1)\"",
                "src=\"https://example.org/a.png\"",
                "src=\"data:text/html,x\"",
                "srcset=\"https://example.org\"",
                "style=\"background: url(https://example.org)\"",
                "style=\"background: u\\72l(x)\"",
                "style=\"position: fixed\"",
                "id=\"x\"")) {
            assertEquals(Optional.of("<a>t</a>"), html("<a " + bad + ">t</a>"), bad);
        }
    }

    @Test
    void texts_and_values_stay_escaped() {
        String markup = "<p title=\"&quot;&gt;&lt;script&gt;\">&lt;script&gt; &amp; <![CDATA[<script>]]></p>";
        assertEquals(
                Optional.of("<p title=\"&quot;&gt;&lt;script&gt;\">&lt;script&gt; &amp; &lt;script&gt;</p>"),
                html(markup));
    }

    @Test
    void elements_without_content_are_written_as_html_has_them() {
        assertEquals(Optional.of("a<br>b<hr>"), html("a<br/>b<hr></hr>"));
    }

    @Test
    void markup_that_is_not_well_formed_is_not_copied() {
        for (String bad : List.of(
                "<p>", "a < b", "<p></div></p>", "<b><i></b></i>", "</div><script>x</script><div>", "&unknown;")) {
            assertEquals(Optional.empty(), html(bad), bad);
        }
    }

    @Test
    void nothing_is_read_from_outside_through_an_entity() {
        String bomb = "<!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/passwd\">]>" + SVG.formatted("<desc>&a;</desc>");
        SafeMarkup.svg(bomb).ifPresent(drawing -> assertFalse(drawing.svg().contains("root:")));
        assertEquals(Optional.empty(), html("<!DOCTYPE p><p>a</p>"));
    }

    @Test
    void a_drawing_inside_the_markup_becomes_a_picture_with_its_words() {
        String html =
                html("<div>" + SVG.formatted("<path d=\"M0 0\"/>") + "</div>").orElseThrow();
        assertTrue(html.startsWith("<div><img src=\"data:image/svg+xml;base64,"), html);
        assertTrue(html.endsWith("\" alt=\"Head over flow\"/></div>"), html);
    }

    @Test
    void a_drawing_keeps_its_lines_and_loses_what_could_run_or_load() {
        String drawing = SVG.formatted(
                "<g clip-path=\"url(#c)\" onload=\"alert(1)\"><path d=\"M0 0\" stroke=\"#000\"/></g>"
                        + "<script>alert(1)</script><foreignObject><p>x</p></foreignObject><image href=\"https://example.org\"/>"
                        + "<use xlink:href=\"https://example.org#a\"/><use xlink:href=\"#a\"/><a href=\"javascript:alert(1)\"/>"
                        + "<rect fill=\"url(https://example.org#x)\"/><set attributeName=\"onload\"/><style>@import 'x'</style>");
        SafeMarkup.Drawing safe = SafeMarkup.svg(drawing).orElseThrow();
        assertEquals("Head over flow", safe.label());
        assertEquals(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" aria-label=\"Head over flow\"><g clip-path=\"url(#c)\"><path d=\"M0 0\" stroke=\"#000\"></path></g>"
                        + "<use></use><use href=\"#a\"></use><rect></rect></svg>",
                safe.svg());
    }

    @Test
    void a_basis_names_only_what_no_earlier_result_has_named() {
        String first = "<section class=\"basis\">\n<h4>Basis</h4>\n<ul>\n<li>a &lt; b</li>\n</ul>\n</section>";
        String second = first.replace("</ul>", "<li>c</li></ul>");
        BasisLines basis = new BasisLines();
        assertTrue(SafeMarkup.html(first, basis).orElseThrow().contains("<h4>Basis</h4><ul>\n<li>a &lt; b</li>"));
        assertEquals(
                Optional.of(
                        "<section class=\"basis\"><h4>Basis, beside what is named above</h4><ul>\n<li>c</li>\n</ul>\n"
                                + "</section>"),
                SafeMarkup.html(second, basis));
        assertEquals(Optional.of("<p>d</p>"), SafeMarkup.html(second + "<p>d</p>", basis));
        assertEquals(List.of("a < b", "c"), basis.all());
    }

    private static Optional<String> html(String markup) {
        return SafeMarkup.html(markup, new BasisLines());
    }

    @Test
    void something_else_than_a_drawing_is_no_drawing() {
        assertEquals(Optional.empty(), SafeMarkup.svg("<html></html>"));
        assertEquals(Optional.empty(), SafeMarkup.svg("not markup"));
    }

    /** 30 branches drawn above one another would be a thumb's breadth wide where other charts have half a page. */
    @Test
    void a_drawing_much_higher_than_wide_is_marked_for_a_page_of_its_own_in_print() {
        String tall =
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"800\" height=\"1500\" viewBox=\"0 0 800 1500\"/>";
        assertTrue(SafeMarkup.svg(tall).orElseThrow().picture("x").startsWith("<img class=\"tall\" src="));
        assertTrue(SafeMarkup.svg(tall.replace("1500", "900"))
                .orElseThrow()
                .picture("x")
                .startsWith("<img src="));
    }
}

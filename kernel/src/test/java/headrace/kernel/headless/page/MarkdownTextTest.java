package headrace.kernel.headless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.notebook.Fields;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MarkdownTextTest {
    @Test
    void headings_get_names_and_are_listed() {
        MarkdownText text = of("# One `two` <b>\n\n## *Three*\n");
        assertEquals(
                List.of(new MarkdownText.Section(1, "One two <b>", "p-1"), new MarkdownText.Section(2, "Three", "p-2")),
                text.sections());
        assertTrue(text.html().contains("<h2 id=\"p-2\"><em>Three</em></h2>"), text.html());
    }

    @Test
    void a_leading_heading_can_be_taken_away() {
        MarkdownText text = of("# One\n\nText\n\n# Two\n");
        text.withoutLeadingHeading();
        assertEquals("<p>Text</p>\n<h1 id=\"p-2\">Two</h1>\n", text.html());
        assertEquals(1, text.sections().size());
    }

    @Test
    void markup_inside_the_text_shows_as_text() {
        String html =
                of("A <b onclick='x()'>b</b>\n\n<script>alert(1)</script>\n").html();
        assertFalse(html.contains("<script"), html);
        assertFalse(html.contains("<b "), html);
        assertTrue(html.contains("&lt;script&gt;alert(1)"), html);
    }

    @Test
    void links_lead_to_pages_and_mail_and_within_the_page_only() {
        assertTrue(of("[a](https://example.org/x?a=1&b=2)")
                .html()
                .contains("<a href=\"https://example.org/x?a=1&amp;b=2\" rel=\"noreferrer\">a</a>"));
        assertTrue(of("[a](#p-2)").html().contains("href=\"#p-2\""));
        for (String bad :
                List.of("javascript:alert(1)", "JaVaScRiPt:alert(1)", "data:text/html,x", "file:///etc", "x.html")) {
            assertEquals("<p>see me</p>\n", of("see [me](" + bad + ")").html());
        }
    }

    @Test
    void an_attached_picture_is_shown_from_the_page_itself() {
        Fields attachments = Fields.NONE.with("dot.png", Fields.NONE.with("image/png", "iVBO\nRw0="));
        String html = MarkdownText.of("![a dot](attachment:dot.png)", attachments, "p")
                .html();
        assertEquals("<p><img src=\"data:image/png;base64,iVBORw0=\" alt=\"a dot\" /></p>\n", html);
    }

    @Test
    void a_picture_that_would_have_to_be_fetched_becomes_words() {
        for (String address :
                List.of("https://example.org/a.png", "a.png", "attachment:absent.png", "data:text/html,x")) {
            String html = of("![the plant room](" + address + ")").html();
            assertEquals("<p>[Picture not in the notebook itself, left out: the plant room]</p>\n", html);
        }
    }

    @Test
    void tables_are_tables() {
        assertTrue(of("| a | b |\n|---|--:|\n| 1 | 2 |\n").html().contains("<td align=\"right\">2</td>"));
    }

    private static MarkdownText of(String text) {
        return MarkdownText.of(text, Fields.NONE, "p");
    }
}

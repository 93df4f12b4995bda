package headrace.kernel.headless.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.kernel.display.Html;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class GroovyColoursTest {
    @Test
    void a_number_takes_its_unit_along() {
        assertEquals(
                "duty(<span class=\"number\">52.m3ph</span>, <span class=\"number\">16.5.m</span>)",
                GroovyColours.html("duty(52.m3ph, 16.5.m)"));
        assertEquals("<span class=\"number\">1</span>..<span class=\"number\">3</span>", GroovyColours.html("1..3"));
    }

    @Test
    void a_named_choice_is_marked_and_the_branches_of_a_condition_are_not() {
        assertEquals("f(<span class=\"choice\">price</span>: p)", GroovyColours.html("f(price: p)"));
        assertEquals("a ? b: c", GroovyColours.html("a ? b: c"));
    }

    @Test
    void a_keyword_inside_a_text_or_a_comment_is_no_keyword() {
        assertEquals("<span class=\"text\">&#39;if // x&#39;</span>", GroovyColours.html("'if // x'"));
        assertEquals(
                "<span class=\"comment\">// if &#39;</span>\n<span class=\"keyword\">if</span>",
                GroovyColours.html("// if '\nif"));
    }

    @Test
    void markup_in_code_shows_as_text() {
        assertEquals("<span class=\"text\">&quot;&lt;script&gt;&quot;</span>", GroovyColours.html("\"<script>\""));
    }

    @Test
    void no_character_is_lost_or_added_whatever_the_code() {
        String letters = "ab1.'\"\\/*\n :,(<&é";
        for (int seed = 0; seed < 2_000; seed++) {
            Random random = new Random(seed);
            StringBuilder code = new StringBuilder();
            for (int i = random.nextInt(40); i >= 0; i--) {
                code.append(letters.charAt(random.nextInt(letters.length())));
            }
            String shown = GroovyColours.html(code.toString()).replaceAll("</?span[^>]*>", "");
            assertEquals(Html.escape(code.toString()), shown, "seed " + seed);
        }
    }
}

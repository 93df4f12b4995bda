package headrace.kernel.display;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class HowFarTest {
    private final HowFar far = new HowFar("hours of the year", 0.29, Optional.of(Duration.ofSeconds(23)));

    @ParameterizedTest
    @CsvSource({
        "0.0, 1 s", "1.2, 2 s", "9.9, 10 s", "12.4, 10 s", "12.6, 15 s", "57.4, 55 s", "57.6, 60 s", "96, 100 s",
        "114, 110 s", "116, 2 min", "149, 2 min", "151, 3 min", "3540, 59 min", "3600, 1 h", "5500, 1.5 h", "7300, 2 h"
    })
    void a_time_is_said_as_roughly_as_it_is_known(double seconds, String said) {
        assertEquals("about " + said + " left", HowFar.worded(Duration.ofMillis(Math.round(seconds * 1000))));
    }

    @Test
    void it_reads_as_a_sentence() {
        assertEquals("hours of the year: 29 %, about 25 s left", far.text());
        assertEquals("hours of the year: 100 %", new HowFar("hours of the year", 1, Optional.empty()).text());
    }

    @Test
    void a_line_has_a_bar_where_there_is_room_and_always_the_numbers() {
        String sentence = "hours of the year: 29 %, about 25 s left";
        assertEquals(sentence + " [########......................]", far.line(200), "0.29 of 30 is 8.7");
        assertEquals(sentence + " [####............]", far.line(59), "0.29 of 16 is 4.64");
        assertEquals(sentence, far.line(50), "seven characters are too few for a bar");
        assertEquals("hours of th…: 29 %, about 25 s left", far.line(35));
    }

    @Test
    void it_is_never_wider_than_the_line() {
        for (int columns = 1; columns < 120; columns++) {
            assertTrue(far.line(columns).length() <= columns, far.line(columns));
        }
    }

    @Test
    void what_a_calculation_says_of_itself_is_text_not_markup() {
        String html = new HowFar("weighing <tests>", 0.5, Optional.empty()).html();
        assertTrue(html.contains("weighing &lt;tests&gt; <progress max=\"100\" value=\"50\">"), html);
        assertFalse(html.contains("<tests>"));
    }

    @Test
    void a_share_beyond_the_whole_is_none() {
        assertThrows(IllegalArgumentException.class, () -> new HowFar("hours", 1.01, Optional.empty()));
        assertThrows(IllegalArgumentException.class, () -> new HowFar("hours", Double.NaN, Optional.empty()));
    }
}

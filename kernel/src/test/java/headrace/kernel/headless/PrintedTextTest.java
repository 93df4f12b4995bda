package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PrintedTextTest {
    @Test
    void a_carriage_return_writes_the_line_anew() {
        assertEquals("first\n100 %\n", printed(100, "first\n1 %\r", "50 %\r100 %\n"));
    }

    @Test
    void a_windows_line_end_is_one_line_end() {
        assertEquals("one\ntwo\n", printed(100, "one\r", "\ntwo\r\n"));
    }

    @Test
    void a_backspace_takes_one_character_of_its_own_line() {
        assertEquals("a\nc", printed(100, "a\nb\b\b\bc"));
    }

    @Test
    void what_is_too_much_is_counted_and_not_kept() {
        assertEquals("abc\n… and 4 more characters, not kept here\n", printed(3, "abcd", "efg"));
    }

    private static String printed(int limit, String... parts) {
        PrintedText text = new PrintedText(limit);
        for (String part : parts) {
            text.append(part);
        }
        return text.kept();
    }
}

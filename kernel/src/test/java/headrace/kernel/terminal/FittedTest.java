package headrace.kernel.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FittedTest {
    @Test
    void a_long_line_is_broken_at_blanks_and_goes_on_further_in() {
        assertEquals("one two\n  three\n  four", Fitted.of("one two three four", 8, 0));
        assertEquals("    a bb\n      cc", Fitted.of("    a bb cc", 9, 0));
    }

    @Test
    void what_fits_stays_as_it_is_with_all_its_line_breaks() {
        assertEquals("one\n\ntwo  \n", Fitted.of("one\n\ntwo  \n", 5, 0));
    }

    @Test
    void what_stands_in_the_line_already_counts() {
        assertEquals("one\n  two\n", Fitted.of("one two\n", 9, 4));
    }

    @Test
    void a_word_longer_than_the_line_and_a_table_with_tabs_are_left_alone() {
        assertEquals("abcdefghij", Fitted.of("abcdefghij", 5, 0));
        assertEquals("abcdefghij\n  k", Fitted.of("abcdefghij k", 5, 0));
        assertEquals("a\tb c d e", Fitted.of("a\tb c d e", 5, 0));
    }

    @Test
    void a_number_stays_with_its_per_cent() {
        assertEquals("at\n  50 %\n  now", Fitted.of("at 50 % now", 6, 0));
    }
}

package headrace.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class NearestTest {
    private static final List<String> NAMES =
            List.of("fit", "duty", "compare", "minimumHead", "minimumSpeed", "gpm", "");

    @ParameterizedTest(name = "{0} was meant to be {1}")
    @CsvSource({
        "fitt, fit",
        "ftt, fit",
        "dty, duty",
        "dtuy, duty",
        "Duty, duty",
        "COMPARE, compare",
        "comapre, compare",
        "compere, compare",
        "minimunhead, minimumHead",
        "minmumHead, minimumHead",
        "gmp, gpm"
    })
    void finds_the_name_that_differs_by_a_slip(String written, String meant) {
        assertEquals(meant, Nearest.to(written, NAMES).get(0));
    }

    @ParameterizedTest
    @CsvSource({"xyz", "quadratic", "m", "''"})
    void finds_nothing_where_nothing_is_near(String written) {
        assertEquals(List.of(), Nearest.to(written, NAMES));
    }

    @Test
    void names_at_most_three_the_nearest_first_and_each_once() {
        assertEquals(List.of("abc", "abd", "abe"), Nearest.to("abc", List.of("abf", "abe", "abd", "abc", "abd")));
    }

    @Test
    void prefers_the_name_whose_capitals_are_right() {
        assertEquals(List.of("kPa", "KPA"), Nearest.to("kpa", List.of("KPA", "kPa")));
    }

    @Test
    void joins_names_as_a_sentence_does() {
        assertEquals("", Nearest.either(List.of()));
        assertEquals("gpm", Nearest.either(List.of("gpm")));
        assertEquals("gpm or lpm", Nearest.either(List.of("gpm", "lpm")));
        assertEquals("gpm, lpm or lps", Nearest.either(List.of("gpm", "lpm", "lps")));
        assertEquals("The nearest is gpm", Nearest.sentence(List.of("gpm"), "None"));
        assertEquals("The nearest are gpm or lpm", Nearest.sentence(List.of("gpm", "lpm"), "None"));
        assertEquals("None", Nearest.sentence(List.of(), "None"));
    }
}

package headrace.kernel.session.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.session.source.Token.Kind;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TokensTest {
    /** Pieces that begin, end or nest something. */
    private static final List<String> PIECES = List.of(
            "'", "\"", "'''", "\"\"\"", "/", "$/", "/$", "${", "{", "}", "(", ")", "[", "]", "//", "/*", "*/", "\n",
            "\\", "x", "52", ".", "m3ph", " ", "->", ",", "=", "é", "🙂", "$", "#!", "\t", "\r\n", "1.5e", "0x", "+");

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "52.m3ph | NUMBER 52, OPERATOR ., WORD m3ph",
                "12.5.kW | NUMBER 12.5, OPERATOR ., WORD kW",
                "1..5 | NUMBER 1, OPERATOR .., NUMBER 5",
                "1.5e-3 + 2 | NUMBER 1.5e-3, OPERATOR +, NUMBER 2",
                "0x1e-3 | NUMBER 0x1e, OPERATOR -, NUMBER 3",
                "a / b / c | WORD a, OPERATOR /, WORD b, OPERATOR /, WORD c",
                "x = /a b/ | WORD x, OPERATOR =, LONG_STRING /a b/",
                "f /a b/ | WORD f, LONG_STRING /a b/",
                "(a)/2 | OPEN (, WORD a, CLOSE ), OPERATOR /, NUMBER 2",
                "'a\\'b' c | STRING 'a\\'b', WORD c",
                "\"a${b}c\" | STRING \"a, OPEN ${, WORD b, CLOSE }, STRING c\"",
                "\"a${ {x} }c\" | STRING \"a, OPEN ${, OPEN {, WORD x, CLOSE }, CLOSE }, STRING c\"",
                "'a${b}' | STRING 'a${b}'",
                "a // b | WORD a, COMMENT // b",
                "a /* b */ c | WORD a, COMMENT /* b */, WORD c",
                "a?.b | WORD a, OPERATOR ?., WORD b",
                "$/a $/ b/$ c | LONG_STRING $/a $/ b/$, WORD c"
            })
    void divides_a_text_as_groovy_does(String text, String tokens) {
        List<String> found = Tokens.of(text).stream()
                .map(token -> token.kind() + " " + token.text())
                .toList();
        assertEquals(tokens, String.join(", ", found));
    }

    @Test
    void a_string_that_does_not_end_in_its_line_is_not_closed() {
        Token string = Tokens.of("x = 'abc\ny").get(2);
        assertEquals(Kind.STRING, string.kind());
        assertEquals("'abc", string.text());
        assertTrue(!string.closed());
    }

    @Test
    void any_text_is_divided_into_pieces_of_itself_in_order_and_never_fails() {
        for (long seed = 0; seed < 2000; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder();
            for (int i = random.nextInt(30); i > 0; i--) {
                text.append(PIECES.get(random.nextInt(PIECES.size())));
            }
            int end = 0;
            for (Token token : Tokens.of(text.toString())) {
                assertTrue(token.start() >= end && !token.text().isEmpty(), text::toString);
                assertTrue(text.substring(end, token.start()).replace("\\", "").isBlank(), text::toString);
                assertEquals(text.substring(token.start(), token.end()), token.text());
                end = token.end();
            }
            assertNotNull(Ending.of(text.toString()));
            assertTrue(Indents.after(text.toString()).isBlank());
        }
    }
}

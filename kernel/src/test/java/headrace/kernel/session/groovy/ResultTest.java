package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ResultTest extends CellTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 + 2 | 3",
                "\"text\" | text",
                "[1, 2] | [1, 2]",
                "[a: 1] | [a:1]",
                "[:] | [:]",
                "52.m3ph | 52 m³/h",
                "-12.degC | -12 °C",
                "1 / 4 | 0.25",
                "x = 3; x | 3",
                "if (true) { 1 } else { 2 } | 1",
                "if (false) { 1 } else { 2 } | 2",
                "try { 1 } finally { 2 } | 1",
                "try { throw new Exception() } catch (e) { 5 } | 5",
                "switch (2) { case 2: 7; break; default: 8 } | 7",
                "return 4 | 4",
                "y = 1; return y + 1 | 2",
                "[1, 2] as int[] | [1, 2]",
                "true | true",
                "\"a ${1 + 1}\" | a 2",
                "x == 3 | false",
                "{ -> 5 }() | 5"
            })
    void the_last_expression_is_the_value(String code, String shown) {
        leadsTo(shown, code.startsWith("x == 3") ? "x = 4" : "0", code);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "// nothing",
                "x = 3",
                "def x = 3",
                "int x = 3",
                "def (a, b) = [1, 2]",
                "x = y = 3",
                "x = 1; x += 2",
                "x = 1; x++",
                "m = [:]; m.a = 3",
                "m = [:]; m['a'] = 3",
                "null",
                "println 'x'",
                "for (i in 1..3) { i }",
                "while (false) { 1 }",
                "if (true) { x = 3 }",
                "if (true) x = 3",
                "if (false) { 1 }",
                "try { x = 3 } catch (e) { x = 4 }",
                "switch (1) { case 1: x = 3; break }",
                "import java.util.concurrent.*",
                "class A {}",
                "def f() { 3 }",
                "enum E { A, B }",
                "return"
            })
    void nothing_is_shown_of_an_assignment_or_where_there_is_no_value(String code) {
        leadsTo("", code);
    }

    @Test
    void a_method_of_a_cell_shows_what_it_is() {
        leadsTo("f(a, int b), a method of this session", "def f(a, int b = 2) { a }", "f");
    }

    @Test
    void a_closure_shows_what_it_is() {
        leadsTo("a closure of 2 parameters", "{ a, b -> a }");
    }

    @Test
    void an_object_whose_text_fails_is_shown_as_such() {
        value("class Bad { String toString() { throw new IllegalStateException('no text') } }");
        leadsTo("(a Bad whose text failed with IllegalStateException: no text)", "new Bad()");
    }

    @Test
    void an_endless_text_is_stopped_like_any_other_code() {
        assertTrue(value("'x' * 100_000").endsWith("(cut here; save it to a file to read it all)"));
    }
}

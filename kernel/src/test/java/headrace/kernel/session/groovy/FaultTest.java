package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.session.Fault;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FaultTest extends CellTest {
    @Test
    void a_cell_that_does_not_parse_shows_its_line_with_a_caret() {
        Fault fault = fault("x = 1\ny = = 3\n");
        assertEquals("cell-not-understood", fault.name());
        assertEquals(
                List.of("Unexpected: =", "Cell 1, line 2:", "    y = = 3", "        ^", "[cell-not-understood]"),
                fault.lines());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "x = (1 + 2 | The bracket ( is not closed | 5",
                "x = [1, 2) | The bracket [ is not closed before ) | 5",
                "x = 1) | The bracket ) closes nothing | 6",
                "x = 'abc | The text that begins here does not end in its line | 5",
                "x = 1 + | The cell ends in the middle | 8",
                "x = “abc” | Unexpected: “ (a text stands between straight marks: ' or \") | 5"
            })
    void what_was_never_closed_is_shown_where_it_began(String code, String what, int column) {
        Fault fault = fault(code);
        assertEquals(what, fault.message());
        assertEquals("Cell 1, line 1:", fault.lines().get(1));
        assertEquals("    " + code, fault.lines().get(2));
        assertEquals("    " + " ".repeat(column - 1) + "^", fault.lines().get(3));
    }

    @Test
    void an_end_in_the_middle_is_shown_at_the_last_line_with_something_in_it() {
        Fault fault = fault("x = 1\ny = x +\n\n\n");
        assertEquals(
                List.of("The cell ends in the middle", "Cell 1, line 2:", "    y = x +", "           ^"),
                fault.lines().subList(0, 4));
    }

    @Test
    void a_method_that_is_called_with_what_it_does_not_take_says_what_it_takes() {
        value("def rise(Flow flow, int n) { n }");
        Fault fault = fault("rise('a', 3)");
        assertEquals("wrong-arguments", fault.name());
        assertTrue(
                fault.message().startsWith("The method rise was given (text, number). It takes (Flow flow, int n). "),
                fault::message);
        assertEquals("wrong-arguments", fault("def own(int n) { n }\nown('a')").name());
    }

    @Test
    void a_closure_that_is_called_with_what_it_does_not_take_says_what_it_takes() {
        assertTrue(fault("k = { int a, b -> a }\nk('x')")
                .message()
                .startsWith("The closure k was given (text). It takes (int a, b). "));
        assertTrue(fault("[1].each { a, b -> a }")
                .message()
                .startsWith("A closure was given (number). It takes (a, b). "));
    }

    @Test
    void a_variable_that_is_called_is_told_to_be_no_method() {
        assertTrue(
                fault("y = 5\ny()").message().startsWith("The variable y was called like a method. It holds a number"));
    }

    @Test
    void the_caret_stands_right_behind_tabs() {
        Fault fault = fault("if (true) {\n\ty = = 3\n}");
        int caret = fault.lines().indexOf("    \t    ^");
        assertTrue(caret > 0, fault.lines()::toString);
    }

    @Test
    void a_class_that_is_not_known_is_a_mistake_of_its_line() {
        Fault fault = fault("x = 1\nFlov f = null");
        assertEquals("cell-not-understood", fault.name());
        assertEquals(
                "There is no class 'Flov'; the nearest is Flow", fault.lines().get(0));
        assertTrue(fault.lines().contains("Cell 1, line 2:"), fault.lines()::toString);
    }

    @Test
    void a_mistake_that_static_types_show_has_its_line_too() {
        Fault fault = fault("@groovy.transform.CompileStatic\nint f() {\n  'abc'.nope()\n}");
        assertTrue(
                fault.lines().contains("    'abc'.nope()") || fault.lines().contains("      'abc'.nope()"),
                fault.lines()::toString);
    }

    @Test
    void a_failure_shows_the_line_of_its_cell_and_nothing_of_the_machinery() {
        Fault fault = fault("a = 1\nb = [1, 2]\nc = b.get(7)\n");
        assertEquals("IndexOutOfBoundsException", fault.name());
        assertEquals(
                List.of(
                        "IndexOutOfBoundsException: Index 7 out of bounds for length 2",
                        "Cell 1, line 3:",
                        "    c = b.get(7)",
                        "          ^"),
                fault.lines());
    }

    @Test
    void a_failure_shows_the_lines_of_all_cells_on_its_way() {
        value("def outer(x) {\n    inner(x)\n}");
        value("def inner(x) {\n    x.get(9)\n}");
        Fault fault = fault("// now\nouter([])");
        assertEquals(
                List.of(
                        "Cell 2, line 2:",
                        "    x.get(9)",
                        "      ^",
                        "called from Cell 1, line 2:",
                        "    inner(x)",
                        "    ^",
                        "called from Cell 3, line 2:",
                        "    outer([])",
                        "    ^"),
                fault.lines().subList(1, fault.lines().size()));
    }

    @Test
    void a_failure_inside_of_a_closure_or_class_shows_its_line() {
        Fault closure = fault("[1].each {\n    throw new IllegalStateException('no') }");
        assertTrue(closure.lines().contains("Cell 1, line 2:"), closure.lines()::toString);
        value("class Pump {\n    def start() {\n        throw new IllegalStateException('dry')\n    }\n}");
        Fault method = fault("new Pump().start()");
        assertTrue(method.lines().contains("Cell 2, line 3:"), method.lines()::toString);
        assertTrue(method.lines().contains("called from Cell 3, line 1:"), method.lines()::toString);
    }

    @Test
    void a_refusal_is_told_in_its_own_words_under_its_own_name() {
        Fault fault = fault("flow = 1.m3ph\nflow.kind().unit('parsec')");
        assertEquals("unknown-unit", fault.name());
        assertTrue(fault.lines().get(0).startsWith("Asked for a flow in 'parsec'. "), fault.lines()::toString);
        assertTrue(fault.lines().get(0).endsWith("[unknown-unit]"), fault.lines()::toString);
        assertEquals(
                List.of("Cell 1, line 2:", "    flow.kind().unit('parsec')"),
                fault.lines().subList(1, 3));
    }

    @Test
    void a_misspelt_variable_is_answered_with_the_nearest() {
        value("designFlow = 3");
        Fault fault = fault("desinFlow + 1");
        assertEquals("unknown-word", fault.name());
        assertTrue(fault.message().contains("designFlow"), fault::message);
        assertFalse(fault.message().contains("Cell_"), fault::message);
    }

    @Test
    void a_misspelt_method_of_an_earlier_cell_is_answered_with_the_nearest() {
        value("def shutOffHead() { 1 }");
        assertTrue(fault("shutOfHead()").message().contains("shutOffHead"));
    }

    @Test
    void a_cast_that_fails_is_told_without_package_names() {
        Fault fault = fault("Flow f = 3");
        assertEquals("GroovyCastException", fault.name());
        assertFalse(fault.message().contains("headrace.units"), fault::message);
        assertFalse(fault.message().contains("java.lang"), fault::message);
    }

    @Test
    void a_cause_is_told_after_what_it_caused() {
        Fault fault = fault("try { [].get(1) } catch (e) { throw new IllegalStateException('no curve', e) }");
        assertEquals("IllegalStateException: no curve", fault.lines().get(0));
        assertTrue(
                fault.lines().stream().anyMatch(line -> line.startsWith("because of IndexOutOfBoundsException")),
                fault.lines()::toString);
    }

    @Test
    void endless_recursion_is_named_and_does_not_fill_the_page() {
        value("def down(n) {\n    down(n + 1)\n}");
        Fault fault = fault("down(0)");
        assertEquals("too-deep", fault.name());
        assertTrue(fault.lines().contains("    down(n + 1)"), fault.lines()::toString);
        assertTrue(fault.lines().size() < 30, fault.lines()::toString);
        leadsTo("2", "1 + 1");
    }

    @Test
    void memory_that_runs_out_is_told_with_figures_and_the_session_lives() {
        Fault fault = fault("hog = []\nwhile (true) { hog << new long[2_000_000_000] }");
        assertEquals("memory-used-up", fault.name());
        assertTrue(fault.message().contains(" MB"), fault::message);
        leadsTo("", "hog = null");
        leadsTo("2", "1 + 1");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "System.exit(3)",
                "java.lang.System.exit(3)",
                "Runtime.getRuntime().exit(3)",
                "Runtime.runtime.halt(3)",
                "import static java.lang.System.exit\nexit(3)",
                "def s = System; s.exit(3)",
                "(System.&exit)(3)",
                "[3].each { System.exit(it) }",
                "class K { static void go() { System.exit(3) } }\nK.go()",
                "@groovy.transform.CompileStatic void go() { System.exit(3) }\ngo()",
                "@groovy.transform.CompileStatic void go() { Runtime.getRuntime().halt(3) }\ngo()",
                "System.'exit'(3)"
            })
    void a_cell_cannot_end_the_process(String code) {
        Fault fault = fault(code);
        assertEquals("exit-refused", fault.name());
        assertTrue(fault.message().contains("exit code 3"), fault::message);
        leadsTo("2", "1 + 1");
    }

    @Test
    void other_calls_of_the_system_work_as_ever() {
        leadsTo(
                "true",
                "System.currentTimeMillis() > 0 && Runtime.runtime.maxMemory() > 0 && System.getProperty('java.version') != null");
    }

    @Test
    void an_assertion_shows_its_parts() {
        Fault fault = fault("a = 1\nassert a == 2");
        assertEquals("PowerAssertionError", fault.name());
        assertTrue(fault.lines().stream().anyMatch(line -> line.contains("assert a == 2")), fault.lines()::toString);
    }

    @Test
    void a_failure_whose_message_fails_is_still_told() {
        Fault fault =
                fault("throw new RuntimeException() { String getMessage() { throw new IllegalStateException() } }");
        assertFalse(fault.lines().isEmpty());
        leadsTo("2", "1 + 1");
    }

    @Test
    void a_failure_inside_of_a_stream_or_future_is_told_as_itself() {
        assertEquals(
                "ArithmeticException",
                fault("java.util.concurrent.CompletableFuture.supplyAsync { 1.intdiv(0) }.get()")
                        .name());
        assertEquals(
                "IllegalStateException",
                fault("[1].stream().map { throw new IllegalStateException('no') }.toList()")
                        .name());
        assertEquals(
                "IOException",
                fault("Runnable r = { throw new IOException('gone') }; r.run()").name());
    }

    @Test
    void the_last_trace_has_all_frames() {
        fault("[].get(5)");
        String trace = value("lastTrace()");
        assertTrue(trace.contains("IndexOutOfBoundsException") && trace.contains("GroovySession"), trace);
    }

    @Test
    void the_lines_of_a_cell_that_was_not_kept_are_shown_as_those_of_this_cell() {
        Fault fault = ((headrace.kernel.session.Outcome.Failed) session.run("[].get(1)", false, output)).fault();
        assertTrue(fault.lines().contains("This cell, line 1:"), fault.lines()::toString);
        assertEquals(0, session.count());
    }

    @Test
    void a_failing_cell_counts_and_is_kept_in_the_history() {
        fault("nothing.there");
        value("1");
        assertEquals(2, session.count());
        assertEquals(
                List.of("nothing.there", "1"),
                session.history().stream().map(each -> each.code()).toList());
        assertEquals(
                List.of("", "1"),
                session.history().stream().map(each -> each.result()).toList());
    }
}

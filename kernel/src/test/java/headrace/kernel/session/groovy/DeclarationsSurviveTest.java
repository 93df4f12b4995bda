package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class DeclarationsSurviveTest extends CellTest {
    @Test
    void a_plain_variable_survives_its_cell() {
        leadsTo("5", "a = 2", "a + 3");
    }

    @Test
    void a_def_survives_its_cell() {
        leadsTo("5", "def a = 2", "a + 3");
    }

    @Test
    void a_typed_variable_survives_with_its_first_value_of_that_type() {
        leadsTo("3", "int y = 3.7", "y");
        leadsTo("[3, 1]", "Set s = [3, 1, 3]", "s");
        leadsTo("3", "double[] d = [1, 2, 3]", "d.length");
        leadsTo("x1", "String t = \"x${y - 2}\"", "t");
        leadsTo("7", "Runnable r = { y = 7 }", "r.run()", "y");
    }

    @Test
    void a_typed_variable_keeps_its_type_until_it_is_declared_anew() {
        leadsTo("3", "int y = 4", "y = 3.7", "y");
        leadsTo("3.7", "int y = 4", "def y = 2", "y = 3.7", "y");
        leadsTo("text", "int y = 4", "String y = 'a'", "y = 'te'\ny += 'xt'\ny");
        leadsTo("[1, 2]", "List l = [1]", "l += 2", "l");
        leadsTo("true", "Set s = [1, 1]", "s = [2, 2]", "s instanceof Set && s.size() == 1");
        leadsTo("3", "def (int c, String d) = [1, 'x']", "c = 3.9", "c");
    }

    @Test
    void a_typed_variable_refuses_what_cannot_be_made_of_its_type() {
        value("int y = 3\nFlow q = 3.m3ph");
        for (String wrong : new String[] {"y = 'a lot'", "y = null", "q = 3.m"}) {
            assertEquals("GroovyCastException", fault(wrong).name(), wrong);
        }
    }

    @Test
    void a_declared_variable_without_a_value_holds_null_or_the_zero_of_its_type() {
        leadsTo("true", "def u", "u == null");
        leadsTo("0", "int i", "i");
        leadsTo("0.0", "double d", "d");
        leadsTo("false", "boolean b", "b");
    }

    @Test
    void several_variables_declared_at_once_survive() {
        leadsTo("[1, 2]", "def (a, b) = [1, 2]", "[a, b]");
        leadsTo("[3, x]", "def (int c, String d) = [3.7, 'x']", "[c, d]");
        leadsTo("[1, 2]", "int e = 1, f = 2", "[e, f]");
        leadsTo("9", "final g = 9", "g");
        leadsTo("8", "var h = 8", "h");
        leadsTo("6", "@groovy.transform.Field int k = 6", "k");
    }

    @Test
    void a_variable_of_a_block_stays_in_its_block() {
        value("if (true) { def inner = 1 }");
        fault("inner");
    }

    @Test
    void a_method_sees_the_variables_of_its_session() {
        leadsTo("20", "def factor = 10", "def scaled(x) { x * factor }", "scaled(2)");
    }

    @Test
    void a_method_survives_its_cell_with_its_overloads_and_defaults() {
        leadsTo(
                "[1:1, s:x, 7]",
                "def f(int n) { \"1:$n\" }\ndef f(String s) { \"s:$s\" }\ndef g(a, b = 5) { a + b }",
                "[f(1), f('x'), g(2)]");
    }

    @Test
    void a_method_defined_anew_is_the_one_that_counts_everywhere() {
        leadsTo("new", "def g() { 'old' }\ndef f() { g() }", "def g() { 'new' }", "f()");
    }

    @Test
    void a_method_may_call_one_that_a_later_cell_defines() {
        leadsTo("1", "def f() { later() }", "def later() { 1 }", "f()");
    }

    @Test
    void a_method_and_a_variable_may_share_a_name() {
        leadsTo("8", "def twice(x) { 2 * x }\ntwice = twice(2)", "twice(twice)");
    }

    @Test
    void a_method_or_closure_of_ones_own_wins_over_a_word_of_its_name() {
        leadsTo("[6, 6]", "def quantity(x) { 2 * x }\na = quantity(3)", "[a, quantity(3)]");
        leadsTo("[6, 6]", "clear = { 2 * it }\nb = clear(3)", "[b, [3].collect { clear(it) }[0]]");
        leadsTo("4", "import static java.lang.Math.max\nmax(1, 2)", "def max(a, b) { 4 }", "max(1, 2)");
    }

    @Test
    void a_word_stays_a_word_beside_a_variable_of_its_name() {
        leadsTo("40 m³/h", "duty = duty(52.m3ph, 16.m)", "duty(40.m3ph, 10.m).flow");
    }

    @Test
    void a_method_can_be_handed_on_by_its_bare_name() {
        leadsTo("[1, 4, 9]", "def square(x) { x * x }", "[1, 2, 3].collect(square)");
    }

    @Test
    void imports_of_every_form_survive() {
        leadsTo("1", "import java.util.concurrent.atomic.AtomicInteger", "new AtomicInteger(1)");
        leadsTo("2", "import java.util.concurrent.atomic.*", "new AtomicLong(2)");
        leadsTo("4.0", "import static java.lang.Math.sqrt", "sqrt(16)");
        leadsTo("1.0", "import static java.lang.Math.*", "cos(0)");
        leadsTo("3", "import java.util.concurrent.atomic.AtomicInteger as Counter", "new Counter(3)");
        leadsTo("5", "import static java.lang.Math.max as greatest", "greatest(4, 5)");
    }

    @Test
    void a_later_import_of_a_name_wins() {
        leadsTo("java.awt.List", "import java.util.LinkedList as L", "import java.awt.List as L\nL.name");
        leadsTo("java.awt.List", "L.name");
    }

    @Test
    void classes_enums_records_and_traits_survive() {
        leadsTo("3", "class Pt { int x; int sum(Pt o) { x + o.x } }", "new Pt(x: 1).sum(new Pt(x: 2))");
        leadsTo("[LOW, HIGH]", "enum Level { LOW, HIGH }", "Level.values() as List");
        leadsTo("4", "record Size(int a, int b) {}", "new Size(1, 3).with { a + b }");
        leadsTo(
                "hello",
                "trait Polite { def greet() { 'hello' } }",
                "class Guest implements Polite {}",
                "new Guest().greet()");
        leadsTo("7", "interface Seven { default int n() { 7 } }", "class It implements Seven {}\nnew It().n()");
    }

    @Test
    void a_class_can_be_defined_anew() {
        leadsTo("2", "class Pt { def n() { 1 } }", "class Pt { def n() { 2 } }", "new Pt().n()");
    }

    @Test
    void a_class_may_have_the_name_of_an_earlier_import() {
        leadsTo(
                "mine",
                "import java.util.concurrent.atomic.AtomicInteger as Pt",
                "class Pt { def n() { 'mine' } }",
                "new Pt().n()");
    }

    @Test
    void a_closure_survives_with_what_it_holds() {
        leadsTo("3", "n = 0; inc = { n++ }", "3.times { inc() }", "n");
        leadsTo("12", "adder = { a -> { b -> a + b } }", "adder(5)(7)");
    }

    @Test
    void a_main_method_alone_does_not_run() {
        leadsTo("", "def main() { println 'ran' }");
        assertEquals("", output.out());
    }

    @Test
    void a_method_that_a_script_has_itself_is_refused_with_a_reason() {
        assertTrue(fault("def run() { 1 }").message().contains("give it another name"));
        assertTrue(fault("static void main(String[] a) { 1 }").message().contains("give it another name"));
        leadsTo("2", "def run(x) { x }", "run(2)");
    }
}

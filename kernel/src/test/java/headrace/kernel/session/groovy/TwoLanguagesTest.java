package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TwoLanguagesTest extends CellTest {
    @Test
    void a_variable_is_one_and_the_same_in_both() {
        leadsTo("[1, 2, 3]", "a = [1, 2]", "%%java\na.add(3);", "a");
        leadsTo("7", "%%java\nint n = 3;", "n = n + 4", "%%java\nn");
        leadsTo("true", "%%java\nvar list = new ArrayList<String>();", "b = list", "%%java\n(Object) b == list");
    }

    @Test
    void a_variable_of_groovy_has_its_own_type_in_java() {
        leadsTo("104", "q = 52.m3ph", "%%java\nFlow twice = q.times(2);\nMath.round(twice.toCubicMetresPerHour())");
        leadsTo(
                "AB",
                "words = ['a', 'b']",
                "%%java\nvar all = \"\";\nfor (String w : words) all += w.toUpperCase();\nall");
        leadsTo("3", "map = [one: 1, two: 2]", "%%java\nint sum = 0;\nfor (int each : map.values()) sum += each;\nsum");
    }

    @Test
    void a_variable_that_changes_its_type_in_groovy_does_so_in_java() {
        leadsTo("4", "x = 1", "%%java\nint y = x + 1;", "x = 'text'", "%%java\nx.length()");
    }

    @Test
    void a_method_of_java_is_called_from_groovy_in_its_newest_form() {
        leadsTo("42", "%%java\nint twice(int x) { return 2 * x; }", "twice(21)");
        leadsTo("63", "%%java\nint twice(int x) { return 3 * x; }", "twice(21)");
        leadsTo("abab", "%%java\nString twice(String x) { return x + x; }", "twice('ab')");
        leadsTo("63", "twice(21)");
    }

    @Test
    void a_method_of_groovy_is_called_from_java_in_its_newest_form() {
        leadsTo("42", "int twice(int x) { 2 * x }", "%%java\nint y = twice(21);\ny");
        leadsTo("63", "int twice(int x) { 3 * x }", "%%java\nint z = twice(21);\nz");
        leadsTo("abab", "def twice(x) { x + x }", "%%java\ntwice(\"ab\")");
    }

    @Test
    void a_class_of_java_is_used_from_groovy() {
        leadsTo("5", "%%java\nclass Tank { int litres = 5; int twice() { return 2 * litres; } }", "new Tank().litres");
        leadsTo("10", "t = new Tank(); t.twice()");
        leadsTo("5", "%%java\nTank u = (Tank) t;\nu.litres");
        leadsTo("Coil[size=3]", "%%java\nrecord Coil(int size) {}", "new Coil(3)");
    }

    @Test
    void a_class_of_groovy_is_used_from_java() {
        leadsTo(
                "5",
                "class Tank { int litres = 5\n int twice() { 2 * litres } }\nt = new Tank()",
                "%%java\nt.getLitres()");
        leadsTo("10", "%%java\nvar u = new Tank();\nu.twice()");
        leadsTo("10", "u.twice()");
        leadsTo("15", "class Tank { int litres = 5\n int thrice() { 3 * litres } }", "%%java\nnew Tank().thrice()");
    }

    @Test
    void a_function_passes_from_one_to_the_other() {
        leadsTo("6", "f = { it * 2 }", "%%java\nf.call(3)");
        leadsTo("6", "%%java\nFunction<Integer, Integer> g = x -> x * 2;", "g.apply(3)");
    }

    @Test
    void words_choices_and_units_are_there_in_java() {
        leadsTo(
                "quadratic, 35 % minimum head",
                "%%java\nvar design = duty(m3ph(52), m(16));",
                "%%java\nvar law = quadratic(design, minimumHead(percent(35)));\nlaw.name()");
        leadsTo("5.5 kW", "%%java\nmotor(kW(5.5), ie(3), poles(4)).rated()");
        leadsTo("52 m³/h", "design.flow()");
    }

    @Test
    void a_redefined_method_is_really_redefined() {
        leadsTo("2", "%%java\nint a() { return 1; }\nint b() { return a() + 1; }", "%%java\nb()");
        leadsTo("11", "%%java\nint a() { return 10; }", "%%java\nb()");
    }

    @Test
    void a_redefined_class_changes_the_objects_that_there_are() {
        value("%%java\nclass Tank { int litres = 5; int read() { return litres; } }\nTank t = new Tank();");
        value("%%java\nclass Tank { int litres = 5; int read() { return 100 * litres; } }");
        leadsTo("500", "%%java\nt.read()");
        leadsTo("500", "t.read()");
        assertEquals("", output.out());
    }

    @Test
    void what_a_redefinition_had_to_reset_is_said() {
        value("%%java\nclass Tank { int litres = 5; }\nTank t = new Tank();\nint untouched = 7;");
        value("%%java\nclass Tank { int litres = 5; int height = 2; }");
        assertTrue(output.out().contains("The variable t was reset"), output.out());
        leadsTo("7", "%%java\nuntouched");
        leadsTo("2", "%%java\nt = new Tank();\nt.height");
    }

    @Test
    void a_definition_may_wait_for_another() {
        value("%%java\nint sum() { return unheardOf() + 1; }");
        assertTrue(output.out().contains("The method sum can be used once unheardOf() is defined."), output.out());
        assertEquals("unfinished-code", fault("%%java\nsum()").name());
        leadsTo("3", "%%java\nint unheardOf() { return 2; }", "%%java\nsum()");
    }

    @Test
    void the_last_expression_is_the_value_and_an_assignment_has_none() {
        leadsTo("3", "%%java\nint x = 1;\nx + 2");
        leadsTo("", "%%java\nx = 5;");
        leadsTo("", "%%java\nvar y = 2;");
        leadsTo("5", "%%java\nx");
        leadsTo("", "%%java\n// nothing");
    }

    @Test
    void a_cell_says_its_language_on_its_first_line() {
        leadsTo("3", "%%groovy\ndef f = { it + 1 }\nf(2)");
        assertEquals("unknown-language", fault("%%jva\n1").name());
    }

    @Test
    void the_libraries_of_the_kernel_are_hidden_in_both() {
        assertEquals(
                "cell-not-understood",
                fault("import com.google.gson.Gson\nnew Gson()").name());
        assertEquals(
                "cell-not-understood",
                fault("%%java\nvar g = new com.google.gson.Gson();").name());
        assertEquals(
                "cell-not-understood",
                fault("%%java\norg.zeromq.ZContext c = null;").name());
    }
}

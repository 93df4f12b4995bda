package headrace.kernel.session.groovy;

import static headrace.kernel.session.Completeness.State.COMPLETE;
import static headrace.kernel.session.Completeness.State.INCOMPLETE;
import static headrace.kernel.session.Completeness.State.INVALID;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CompletenessTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "   \n\n",
                "// a remark",
                "/* a remark */",
                "x = 1",
                "x = 1;",
                "x++",
                "fit(test)",
                "compare(set, year, price: 0.18.perKWh)",
                "if (a) b",
                "if (a) { b }",
                "if (a) { b } else { c }",
                "try { a } catch (Exception e) { b }",
                "try { a } finally { b }",
                "do { a } while (b)",
                "for (i in 1..3) { print i }",
                "while (a) b()",
                "def f(x) {\n  x + 1\n}",
                "class A { int b }",
                "import java.util.*",
                "import static java.lang.Math.*",
                "foo bar",
                "1 2 3",
                "x = /a b/",
                "x = a / b / c",
                "x = (a) / 2",
                "x = $/a $/ b/$",
                "x = \"a ${b + \"c ${d}\"} e\"",
                "x = '''a\nb'''",
                "x = \"\"\"a ${ [1, 2].collect { it } }\nb\"\"\"",
                "x = [a: 1, b: [2, 3]]",
                "c = { a -> a + 1 }",
                "x = a ? b : c",
                "list.collect { it * 2 }.sum()",
                "x = 'it''s'",
                "println '// no remark'",
                "x = 1 + \\\n 2",
                "@Deprecated\ndef f() {}",
                "s = 'a // b /* c'",
                "return",
                "r = 1..5",
                "x = a.class",
                "x = a.in",
                "list*.size()",
                "assert 1 == 1 : 'why'"
            })
    void can_run(String code) {
        assertEquals(COMPLETE, CompletenessCheck.of(code).state());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "foo(1,",
                "foo(1",
                "x = [1, 2",
                "c = {",
                "c = { a ->",
                "def f(x) {\n x + 1",
                "class A {",
                "class A",
                "x = \"\"\"abc",
                "x = '''abc",
                "x = \"\"\"a ${b",
                "/* a remark",
                "x =",
                "x = 1 +",
                "x = 1 +   // more to come",
                "x = a &&",
                "x = a ?",
                "x = a ? b :",
                "x.",
                "x?.",
                "x = 1, ",
                "x = 1 \\",
                "if (a)",
                "if (a) { b } else",
                "for (i in 1..3)",
                "while (a)",
                "try { a }",
                "try {",
                "do { a }",
                "try { a } catch (Exception e)",
                "switch (a) {",
                "def",
                "import",
                "x = new",
                "@groovy.transform.CompileStatic",
                "list.collect {\n  it",
                "x = [\n  a: 1,\n  b: 2,",
                "compare(set, year, laws: [\n    constantSpeed(),"
            })
    void needs_more_lines(String code) {
        assertEquals(INCOMPLETE, CompletenessCheck.of(code).state());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "x = 'abc",
                "x = \"abc",
                "))",
                "x = (1]",
                "{ ]",
                "x = = 3",
                "x = 'a\nb'",
                "x = 1 2 +* 3",
                "def 3 = x",
                "class { }"
            })
    void can_never_run(String code) {
        assertEquals(INVALID, CompletenessCheck.of(code).state());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'c = {'|4",
                "'if (a) {'|4",
                "'if (a) {\n    b = ['|8",
                "'f(1,'|4",
                "'if (a) {\n    b = 1'|4",
                "'if (a) {\n    b = {\n        c\n    }'|4",
                "'x ='|4",
                "'x = \"\"\"a'|0",
                "'c = { a ->'|4"
            })
    void the_next_line_stands_in(String code, int blanks) {
        assertEquals(" ".repeat(blanks), CompletenessCheck.of(code).indent());
    }
}

package headrace.kernel.session.groovy;

import groovy.lang.GroovyShell;
import headrace.script.ScriptLanguage;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A declaration that outlives its cell holds what the same declaration holds in a plain Groovy script. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class DeclarationsMeanTheSameTest extends CellTest {
    private static final String TELL = "[v.class?.simpleName, v as String]";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "int v = 3.7",
                "Integer v = 3.7",
                "long v = 1",
                "float v = 1",
                "double v = 2",
                "BigDecimal v = 1.5",
                "BigInteger v = 7",
                "byte v = 300",
                "char v = 'x'",
                "String v = 'a'",
                "String v = \"a${1 + 1}\"",
                "String v = 5",
                "def v = \"a${1 + 1}\"",
                "boolean v = []",
                "boolean v = 'x'",
                "Boolean v = null",
                "Object v = null",
                "List v = [1, 2]",
                "List<Integer> v = [1, 2]",
                "Map<String, List<Integer>> v = [a: [1]]",
                "Set v = [1, 1]",
                "LinkedList v = [1, 2]",
                "int[] v = [1, 2]",
                "double[] v = [1, 2.5]",
                "String[] v = ['a', 'b']",
                "java.util.concurrent.TimeUnit v = 'DAYS'",
                "java.awt.Point v = [1, 2]",
                "Flow v = 52.m3ph",
                "def v = -12.degC",
                "var v = 1 / 4",
                "final v = 2",
                "final int v = 2.9",
                "int v",
                "Integer v",
                "boolean v",
                "double v = 1 / 3",
                "int w = 1, v = 2.5",
                "def (w, v) = [1, 2]",
                "def (int w, long v) = [1, 2.9]",
                "def (w, v) = [1]",
                "def (w, String v) = [1, 5]",
                "def v = { 3 }()",
                "int v = 0; for (int i = 0; i < 3; i++) { v += i }",
                "def v = 1; def c = { v++ }; c(); c()",
                "int v = 0; new Object() { void go() { v += 5 } }.go()",
                "int v = 0; Runnable r = () -> v = 4; r.run()",
                "def v = [1, 2, 3].collect { int x = it; x * 2 }",
                "def v; v = v ?: 9",
                "java.util.function.Function<Integer, Integer> f = { it + 1 }; def v = f.apply(2)",
                "Closure<Integer> f = { 4 }; def v = f()",
                "def v = 'abc'[0]; v += 'd'",
                "int v = 5; v **= 2",
                "def v = [a: 1]; v.b = 2; v['c'] = 3",
                "def v = [1, 2]; v << 3; v[0] = 7",
                "def v = 1; label: for (i in 1..3) { v = i; if (i == 2) break label }",
                "def v = 1; switch (v) { case 1: v = 'one'; break; default: v = 'other' }",
                "def v = 1; try { throw new Exception('x') } catch (e) { v = e.message } finally { v += '!' }",
                "int v = 7; v = v.intdiv(2)"
            })
    void as_in_a_plain_script(String code) {
        GroovyShell plain = new GroovyShell(getClass().getClassLoader(), ScriptLanguage.configuration());
        // What a script declares is seen only by itself, so the plain one tells it in the same text.
        leadsTo(String.valueOf(plain.evaluate(code + "\n" + TELL)), code, TELL);
    }
}

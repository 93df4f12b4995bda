package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.session.Completeness.State;
import headrace.kernel.session.Fault;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds for Groovy cells holds for cells of Java: how they stop, fail and say so. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(120)
class JavaCellTest {
    private final GroovySession session = new GroovySession(Language.JAVA);
    private final Recorded output = new Recorded();

    @AfterEach
    void end() {
        session.close();
    }

    private String value(String code) {
        Outcome outcome = session.run(code, true, output);
        assertFalse(outcome instanceof Outcome.Failed, () -> code + ": " + outcome);
        return outcome instanceof Outcome.Value value ? value.bundle().text() : "";
    }

    private Fault fault(String code) {
        Outcome outcome = session.run(code, true, output);
        assertTrue(outcome instanceof Outcome.Failed, () -> code + ": " + outcome);
        return ((Outcome.Failed) outcome).fault();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "System.out.println(); while (true) {}",
                "System.out.println(); for (int i = 0; ; i++) {}",
                "int n = 0; System.out.println(); do { n++; } while (true)",
                "long fib(int n) { return n < 2 ? n : fib(n - 1) + fib(n - 2); }\nSystem.out.println(); fib(90)",
                "System.out.println(); Thread.sleep(1_000_000)",
                "System.out.println(); new java.util.concurrent.LinkedBlockingQueue<String>().take()",
                "Object o = new Object(); System.out.println(); synchronized (o) { o.wait(); }",
                "System.out.println(); while (true) { try { Thread.sleep(10); } catch (Throwable t) { } }",
                "System.out.println(); Stream.iterate(1, x -> x + 1).filter(x -> x < 0).findFirst()",
                "class Turn { void go() { for (;;) { } } }\nSystem.out.println(); new Turn().go()",
                "System.out.println(); List.of(3, 1, 2).stream().sorted((a, b) -> { while (true) { } }).toList()",
                "System.out.println(); input(\"Flow? \")",
                "System.out.println(); new Scanner(System.in).nextLine()"
            })
    void an_interrupt_ends(String code) throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        Recorded heard = new Recorded() {
            @Override
            public void print(String text) {
                begun.countDown();
            }

            @Override
            public java.util.Optional<String> ask(String prompt, boolean secret) {
                try {
                    Thread.sleep(1_000_000);
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return java.util.Optional.empty();
            }
        };
        CompletableFuture<Outcome> cell = CompletableFuture.supplyAsync(() -> session.run(code, true, heard));
        begun.await();
        session.interrupt();
        Outcome outcome = cell.join();
        assertTrue(outcome instanceof Outcome.Failed, code);
        assertEquals("cell-stopped", ((Outcome.Failed) outcome).fault().name());
        assertEquals("3", value("1 + 2"));
    }

    @Test
    void endless_recursion_is_reported_and_the_session_lives() {
        Fault fault = fault("int deep(int n) {\n  return deep(n + 1);\n}\ndeep(0)");
        assertEquals("too-deep", fault.name());
        assertTrue(fault.lines().contains("Cell 1, line 2:"), fault.lines()::toString);
        assertEquals("3", value("1 + 2"));
    }

    @Test
    void running_out_of_memory_is_reported_and_the_session_lives() {
        assertEquals(
                "memory-used-up", fault("new long[Integer.MAX_VALUE - 2][100]").name());
        assertEquals("3", value("1 + 2"));
    }

    @Test
    void asking_to_end_the_process_is_refused() {
        assertEquals("exit-refused", fault("System.exit(3);").name());
        assertEquals("exit-refused", fault("Runtime.getRuntime().halt(3);").name());
    }

    @Test
    void an_error_on_another_thread_is_told_in_the_cell() {
        value("var t = new Thread(() -> { throw new IllegalStateException(\"dry\"); });\nt.start();\nt.join();");
        assertTrue(output.err().contains("IllegalStateException: dry"), output.err());
        assertTrue(output.err().contains("Cell 1, line 1:"), output.err());
    }

    @Test
    void an_error_shows_the_lines_of_the_cells_that_led_to_it_and_nothing_else() {
        value("int half(int n) {\n  if (n == 0) throw new IllegalArgumentException(\"no flow\");\n  return n / 2;\n}");
        Fault fault = fault("int n = 0;\n\nhalf(n)");
        assertEquals(
                List.of(
                        "IllegalArgumentException: no flow",
                        "Cell 1, line 2:",
                        "    if (n == 0) throw new IllegalArgumentException(\"no flow\");",
                        "    ^",
                        "called from Cell 2, line 3:",
                        "    half(n)",
                        "    ^"),
                fault.lines());
        assertTrue(value("lastTrace()").contains("IllegalArgumentException: no flow"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "int n = 0;\\nint m = 1 / n; | 2",
                "int n = 0;\\n\\n// why\\nint m =\\n    1 / n; | 4",
                "int n = 0;\\nvar f = 3;\\nif (f > 2) {\\n  n = f / n;\\n} | 4",
                "%%java\\n\\nint n = 0; int m = 1 / n; | 3",
                "class A {\\n int half(int n) {\\n  return 1 / n; } }\\nnew A().half(0) | 3",
                "Supplier<Integer> s = () ->\\n  1 / 0;\\n\\ns.get() | 2"
            })
    void the_line_is_the_one_that_failed(String code, int line) {
        Fault fault = fault(code.replace("\\n", "\n"));
        assertEquals("Cell 1, line " + line + ":", fault.lines().get(1), fault.lines()::toString);
    }

    @Test
    void frames_cross_the_languages() {
        value("%%groovy\ndef halve(n) {\n  if (!n) throw new IllegalArgumentException('no flow')\n  n / 2\n}");
        Fault fault = fault("int n = 0;\nhalve(n)");
        assertTrue(fault.lines().contains("Cell 1, line 3:"), fault.lines()::toString);
        assertTrue(fault.lines().contains("called from Cell 2, line 2:"), fault.lines()::toString);
    }

    @Test
    void a_refusal_keeps_its_three_sentences_and_shows_the_line() {
        Fault fault = fault("var design = duty(m3ph(52), m(16));\nquadratic(design)");
        assertEquals("missing-choice", fault.name());
        assertTrue(fault.lines().contains("Cell 1, line 2:"), fault.lines()::toString);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "curv + 1 | The cell says 'curv'. No word and no variable has that name. The nearest is curve. | 0",
                "var a = 1;\\n  duti(1) | The cell says 'duti'. No word and no variable has that name. The nearest is duty | 2",
                "partLoadRule | It is a word, and Java calls it with parentheses: partLoadRule(...). | 0",
                "int n = \"text\" | Incompatible types: String cannot be converted to int | 8",
                "duty(1) | The word duty was given int. It is used as duty(flow, head). An example: duty(m3ph(52), m(16)). | 0",
                "var a = 1;\\nfor (int i = 0; i < 3; i++ { } | ')' expected | 26",
                "curve.lenght() | String has nothing called 'lenght'. The nearest is length | 5",
                "Flov q = null | There is no class 'Flov'. The nearest is Flow | 0"
            })
    void what_does_not_compile_is_told_with_a_caret(String code, String told, int column) {
        value("String curve = \"c\";");
        Fault fault = fault(code.replace("\\n", "\n"));
        assertEquals("cell-not-understood", fault.name());
        assertTrue(fault.lines().stream().anyMatch(line -> line.contains(told)), fault.lines()::toString);
        String caret = fault.lines().stream()
                .filter(line -> line.strip().equals("^"))
                .findFirst()
                .orElse("");
        assertEquals(4 + column, caret.indexOf('^'), fault.lines()::toString);
    }

    @Test
    void broken_grammar_is_told_before_anything_has_run() {
        fault("System.out.println(\"ran\");\nint x = (1;");
        assertEquals("", output.out());
    }

    @ParameterizedTest
    @CsvSource({
        "int f(int x) {, INCOMPLETE",
        "'List.of(1,', INCOMPLETE",
        "x +, INCOMPLETE",
        "1 + 1, COMPLETE",
        "int = 7q, INVALID",
        "x = ), INVALID",
        "x + * 2, INVALID",
        "%%groovy\\n[1].each { it }, COMPLETE",
        "%%groovy\\ndef f(x) {, INCOMPLETE"
    })
    void tells_whether_a_cell_could_run(String code, State state) {
        assertEquals(state, session.completeness(code.replace("\\n", "\n")).state());
    }

    @Test
    void the_compiler_of_java_is_not_loaded_before_it_is_needed() {
        try (GroovySession groovy = new GroovySession()) {
            groovy.run("1 + 1", true, output);
            groovy.complete("du", 2);
            assertFalse(groovy.isJavaAwake());
            groovy.run("%%java\n1 + 1", true, output);
            assertTrue(groovy.isJavaAwake());
        }
    }
}

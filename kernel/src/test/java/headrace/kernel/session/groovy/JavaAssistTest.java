package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Completion;
import headrace.kernel.session.Completion.Candidate;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import headrace.script.Vocabulary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Completion and explanation in cells of Java. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(120)
class JavaAssistTest {
    private final GroovySession session = new GroovySession(Language.JAVA);
    private final Recorded output = new Recorded();

    @AfterEach
    void end() {
        session.close();
    }

    private void run(String code) {
        Outcome outcome = session.run(code, true, output);
        assertFalse(outcome instanceof Outcome.Failed, () -> code + ": " + outcome);
    }

    private Completion at(String code) {
        return session.complete(code.replace("|", ""), code.indexOf('|'));
    }

    private List<String> texts(String code) {
        return at(code).candidates().stream().map(Candidate::text).toList();
    }

    private String told(String code) {
        return session.inspect(code.replace("|", ""), code.indexOf('|'), 1)
                .map(MimeBundle::text)
                .orElse("nothing");
    }

    @Test
    void words_variables_methods_classes_and_keywords_are_completed() {
        run("var flow = m3ph(52);\nint flowing(int n) { return n; }\nclass Flower { }");
        List<String> texts = texts("fl|");
        assertTrue(texts.containsAll(List.of("flow", "flowing")), texts::toString);
        assertTrue(texts("Flo|").containsAll(List.of("Flow", "Flower")));
        assertTrue(texts("quadr|").contains("quadratic"));
        assertTrue(texts("part|").contains("partLoadRule"));
        assertTrue(texts("lastTr|").contains("lastTrace()"));
        assertTrue(texts("sw|").contains("switch"));
        assertFalse(texts("tra|").contains("trait"));
    }

    @Test
    void choices_are_completed_as_calls_and_each_once() {
        assertTrue(texts("motor(kW(5.5), i|").contains("ie("));
        assertFalse(texts("motor(kW(5.5), ie(3), |").contains("ie("));
        assertTrue(texts("save(x, \"y.csv\", |").contains("choice(\"table\", "));
    }

    @Test
    void units_that_fit_the_place_come_first() {
        List<String> flow = texts("duty(|");
        assertTrue(flow.indexOf("m3ph(") >= 0 && flow.indexOf("m3ph(") < 10, flow::toString);
        assertFalse(flow.subList(0, 5).contains("kW("), flow::toString);
        assertTrue(texts("var p = k|").contains("kW("));
    }

    @Test
    void members_are_those_of_java_and_no_code_runs_for_them() {
        run(
                "var flow = m3ph(52);\nclass Trap { int asked; int value() { asked++; return asked; } }\nvar trap = new Trap();");
        assertTrue(texts("flow.|").containsAll(List.of("times(", "toCubicMetresPerHour()")));
        assertTrue(texts("m3ph(52).toCub|").contains("toCubicMetresPerHour()"));
        assertTrue(texts("\"abc\".toUpperC|").stream().anyMatch(text -> text.startsWith("toUpperCase(")));
        assertTrue(texts("trap.value().|").isEmpty());
        assertTrue(texts("trap.val|").contains("value()"));
        run("if (trap.asked != 0) throw new IllegalStateException();");
        assertTrue(texts("java.time.LocalDate.now().plusD|").stream().anyMatch(text -> text.startsWith("plusDays(")));
        assertTrue(texts("var words = List.of(\"a\"); words.get(0).toUpperC|").stream()
                .anyMatch(text -> text.startsWith("toUpperCase(")));
    }

    @Test
    void files_are_completed_inside_the_string_of_a_word_that_reads(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("heron-65.csv"), "");
        String there = folder.toString().replace('\\', '/');
        assertEquals(List.of("heron-65.csv"), texts("readPumpTest(\"" + there + "/he|"));
    }

    @Test
    void a_head_of_another_language_completes_in_that() {
        assertTrue(texts("%%groovy\nmotor(5.5.kW, i|").contains("ie: "));
        assertTrue(texts("%%groovy\nduty(52.m3|").contains("m3ph"));
        Completion completion = at("%%java\nquadr|");
        assertEquals("%%java\n".length(), completion.start());
    }

    @Test
    void completion_answers_while_a_cell_runs() throws InterruptedException {
        run("var flow = m3ph(52);");
        CountDownLatch begun = new CountDownLatch(1);
        Recorded heard = new Recorded() {
            @Override
            public void print(String text) {
                begun.countDown();
            }
        };
        CompletableFuture<?> cell =
                CompletableFuture.supplyAsync(() -> session.run("System.out.println(); while (true) { }", true, heard));
        begun.await();
        assertTrue(texts("flow.ti|").contains("times("));
        assertTrue(texts("java.time.LocalDate.now().plusD|").stream().anyMatch(text -> text.startsWith("plusDays(")));
        assertTrue(told("qua|dratic").contains("minimumHead(…)"));
        assertFalse(cell.isDone());
        session.interrupt();
        cell.join();
    }

    @Test
    void a_word_is_explained_as_java_writes_it() {
        String quadratic = told("qua|dratic(design)");
        assertTrue(quadratic.contains("Example: quadratic(design, minimumHead(percent(35)))"), quadratic);
        assertTrue(told("quadratic(design, minimum|Head(percent(35)))").contains("head kept at no flow"));
        assertEquals("m3ph(1) is a flow of 1 m³/h", told("m3|ph(52)"));
    }

    @Test
    void no_line_of_an_explanation_is_wider_than_76_columns() {
        try (GroovySession groovy = new GroovySession()) {
            for (Vocabulary.Entry word : Vocabulary.all().words()) {
                for (GroovySession each : List.of(groovy, session)) {
                    MimeBundle told = each.inspect(word.name(), 1, 1).orElseThrow();
                    assertTrue(told.forms().keySet().containsAll(List.of("text/plain", "text/html", "text/markdown")));
                    told.text().lines().forEach(line -> assertTrue(line.length() <= 76, line));
                }
            }
        }
    }
}

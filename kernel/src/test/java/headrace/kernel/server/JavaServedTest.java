package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.session.Language;
import headrace.kernel.session.groovy.GroovySession;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Cells of Java over real sockets. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class JavaServedTest {
    private static Served served;
    private static FrontEnd frontEnd;

    @BeforeAll
    static void serve() {
        served = Served.session(() -> new GroovySession(Language.JAVA));
        frontEnd = served.frontEnd();
    }

    @AfterAll
    static void end() {
        served.close();
    }

    private static String value(String code) {
        Exchange exchange = frontEnd.run(code);
        assertEquals(
                "ok",
                exchange.reply().text("status"),
                () -> code + ": " + exchange.reply().content());
        return exchange.event("execute_result")
                .content()
                .getAsJsonObject("data")
                .get("text/plain")
                .getAsString();
    }

    private static String printed(Exchange exchange) {
        StringBuilder text = new StringBuilder();
        exchange.events().stream()
                .filter(event -> event.type().equals("stream"))
                .forEach(event -> text.append(event.text("text")));
        return text.toString();
    }

    @Test
    void a_cell_of_java_has_its_value_and_its_chart() {
        assertEquals("42", value("6 * 7"));
        Exchange exchange = frontEnd.run("fit(readPumpTest(\"demo-data/pumps/heron-65.csv\"))");
        assertTrue(exchange.event("execute_result")
                .content()
                .getAsJsonObject("data")
                .has("image/svg+xml"));
    }

    @Test
    void the_first_line_switches_the_language_of_a_cell() {
        frontEnd.run("var flow = m3ph(52);");
        assertEquals("104 m³/h", value("%%groovy\ntwice = flow * 2; twice"));
        assertEquals("104 m³/h", value("%%java\ntwice"));
        assertEquals("104 m³/h", value("%%groovy\n[twice].first()"));
    }

    @Test
    void a_method_and_a_class_are_defined_anew_and_what_was_reset_is_said() {
        frontEnd.run("int size() { return 1; }\nint all() { return size() + 1; }");
        assertEquals("2", value("all()"));
        frontEnd.run("int size() { return 10; }");
        assertEquals("11", value("all()"));
        frontEnd.run("class Tank { int litres = 1; }\nTank tank = new Tank();");
        Exchange changed = frontEnd.run("class Tank { int litres = 1; int height = 2; }");
        assertTrue(printed(changed).contains("The variable tank was reset"), printed(changed));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "while (true) {}",
                "Thread.sleep(600_000);",
                "Stream.iterate(1, x -> x + 1).filter(x -> x < 0).findFirst()",
                "while (true) { try { while (true) {} } catch (Throwable t) {} }"
            })
    void an_interrupt_ends_a_cell_of_java_and_the_next_one_runs(String code) {
        String id = frontEnd.ask("execute_request", Map.of("code", "System.out.println(\"begun\");\n" + code));
        frontEnd.awaitEvent(event -> event.answers(id) && event.type().equals("stream"));
        frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
        assertEquals("error", frontEnd.reply(id).text("status"));
        frontEnd.eventsOf(id);
        assertEquals("2", value("1 + 1"));
    }

    @Test
    void a_question_is_answered_while_a_cell_runs() {
        String id = frontEnd.ask("execute_request", Map.of("code", "System.out.println(\"begun\");\nwhile (true) {}"));
        frontEnd.awaitEvent(event -> event.answers(id) && event.type().equals("stream"));
        Exchange asked = frontEnd.exchange("complete_request", Map.of("code", "quadr", "cursor_pos", 5));
        assertTrue(asked.reply().content().getAsJsonArray("matches").toString().contains("quadratic"));
        Exchange whole = frontEnd.exchange("is_complete_request", Map.of("code", "for (;;) {"));
        assertEquals("incomplete", whole.reply().text("status"));
        frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
        assertEquals("error", frontEnd.reply(id).text("status"));
        frontEnd.eventsOf(id);
    }

    @Test
    void an_error_shows_the_line_of_the_cell() {
        Exchange failed = frontEnd.run("int n = 0;\nint m = 1 / n;");
        assertEquals("error", failed.reply().text("status"));
        String trace = failed.reply().content().getAsJsonArray("traceback").toString();
        assertTrue(trace.contains("ArithmeticException: / by zero") && trace.contains("line 2:"), trace);
    }
}

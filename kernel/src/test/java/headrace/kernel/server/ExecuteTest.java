package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ExecuteTest {
    private static Served served;
    private static FrontEnd frontEnd;

    @BeforeAll
    static void serve() {
        served = Served.groovy();
        frontEnd = served.frontEnd();
    }

    @AfterAll
    static void end() {
        served.close();
    }

    private static int latestNumber() {
        return execute("1", Map.of("store_history", false)).reply().whole("execution_count");
    }

    private static Exchange execute(String code, Map<String, ?> fields) {
        return frontEnd.exchange("execute_request", content(code, fields));
    }

    private static Map<String, Object> content(String code, Map<String, ?> fields) {
        Map<String, Object> content = new java.util.HashMap<>(fields);
        content.put("code", code);
        return content;
    }

    @Test
    void a_cell_shows_itself_then_its_print_then_its_value_and_then_has_its_reply() {
        int number = latestNumber() + 1;
        Exchange cell = frontEnd.run("println 'head'\n6 * 7");
        assertEquals(List.of("status", "execute_input", "stream", "execute_result", "status"), cell.types());
        assertEquals("println 'head'\n6 * 7", cell.event("execute_input").text("code"));
        assertEquals(number, cell.event("execute_input").whole("execution_count"));
        assertEquals(number, cell.event("execute_result").whole("execution_count"));
        JsonObject data = cell.event("execute_result").content().getAsJsonObject("data");
        assertEquals("42", data.get("text/plain").getAsString());
        assertEquals("ok", cell.reply().text("status"));
        assertEquals(number, cell.reply().whole("execution_count"));
        assertTrue(cell.reply().content().getAsJsonArray("payload").isEmpty());
    }

    @Test
    void each_kept_cell_has_the_next_number() {
        int number = latestNumber();
        assertEquals(number + 1, frontEnd.run("1").reply().whole("execution_count"));
        assertEquals(number + 2, frontEnd.run("1").reply().whole("execution_count"));
    }

    @Test
    void a_failed_cell_has_a_number_too() {
        int number = latestNumber();
        assertEquals(
                number + 1, frontEnd.run("throw new Exception('x')").reply().whole("execution_count"));
    }

    @Test
    void a_cell_without_a_value_has_no_result() {
        assertFalse(frontEnd.run("int unused = 3; null").types().contains("execute_result"));
    }

    @Test
    void a_failure_is_published_once_and_replied_the_same_and_nothing_is_printed() {
        Exchange cell = frontEnd.run("throw new IllegalStateException('no flow')");
        assertEquals(List.of("status", "execute_input", "error", "status"), cell.types());
        JsonObject published = cell.event("error").content();
        assertTrue(published.get("evalue").getAsString().contains("no flow"));
        assertFalse(published.has("status"), "only the reply says how the cell ended");
        assertEquals("error", cell.reply().text("status"));
        for (String field : List.of("ename", "evalue", "traceback")) {
            assertEquals(published.get(field), cell.reply().content().get(field));
        }
    }

    @Test
    void a_silent_cell_tells_nobody_and_leaves_number_and_history_alone() {
        int number = latestNumber();
        Exchange cell = execute("quietly = 5; println 'unheard'; quietly", Map.of("silent", true));
        assertEquals(List.of("status", "status"), cell.types());
        assertEquals(number, cell.reply().whole("execution_count"));
        assertEquals(number, latestNumber());
        assertEquals("5", result(frontEnd.run("quietly")));
        assertFalse(historyCodes().stream().anyMatch(code -> code.contains("unheard")));
    }

    @Test
    void a_silent_cell_that_fails_says_so_in_its_reply_alone() {
        Exchange cell = execute("throw new Exception('hush')", Map.of("silent", true));
        assertEquals(List.of("status", "status"), cell.types());
        assertEquals("error", cell.reply().text("status"));
    }

    @Test
    void a_cell_that_is_not_stored_is_heard_but_leaves_number_and_history_alone() {
        int number = latestNumber();
        Exchange cell = execute("println 'heard'; 'not kept'", Map.of("store_history", false));
        assertEquals("heard\n", cell.printed("stdout"));
        assertEquals("not kept", result(cell));
        assertEquals(number, cell.reply().whole("execution_count"));
        assertEquals(number + 1, frontEnd.run("1").reply().whole("execution_count"));
        assertFalse(historyCodes().stream().anyMatch(code -> code.contains("not kept")));
    }

    @Test
    void user_expressions_are_evaluated_after_the_cell_each_for_itself() {
        Exchange cell = execute(
                "flow = 20", Map.of("user_expressions", Map.of("twice", "flow * 2", "broken", "flow.noSuchThing")));
        JsonObject expressions = cell.reply().content().getAsJsonObject("user_expressions");
        JsonObject twice = expressions.getAsJsonObject("twice");
        assertEquals("ok", twice.get("status").getAsString());
        assertEquals("40", twice.getAsJsonObject("data").get("text/plain").getAsString());
        JsonObject broken = expressions.getAsJsonObject("broken");
        assertEquals("error", broken.get("status").getAsString());
        assertTrue(broken.has("ename") && broken.has("evalue") && broken.has("traceback"));
        assertEquals("ok", cell.reply().text("status"));
        assertFalse(cell.types().contains("error"));
    }

    @Test
    void user_expressions_take_no_number() {
        int number = latestNumber();
        execute("", Map.of("silent", true, "user_expressions", Map.of("a", "1")));
        assertEquals(number, latestNumber());
    }

    @Test
    void a_failure_aborts_the_cells_that_wait_and_each_reply_has_a_number() {
        List<String> ids = new ArrayList<>();
        ids.add(frontEnd.ask("execute_request", Map.of("code", "sleep 300; throw new Exception('first')")));
        ids.add(frontEnd.ask("execute_request", Map.of("code", "ranAnyway = true")));
        ids.add(frontEnd.ask("execute_request", Map.of("code", "ranAnyway = true")));
        Message first = frontEnd.reply(ids.get(0));
        assertEquals("error", first.text("status"));
        for (String id : ids.subList(1, 3)) {
            Message reply = frontEnd.reply(id);
            assertEquals("aborted", reply.text("status"));
            assertEquals(first.whole("execution_count"), reply.whole("execution_count"));
            assertEquals(
                    List.of("status", "status"),
                    frontEnd.eventsOf(id).stream().map(Message::type).toList());
        }
        assertEquals("1", result(frontEnd.run("1")));
        assertEquals("false", result(frontEnd.run("binding.hasVariable('ranAnyway')")));
    }

    @Test
    void a_failure_that_is_not_to_stop_the_others_does_not() {
        String first = frontEnd.ask(
                "execute_request", content("sleep 300; throw new Exception('go on')", Map.of("stop_on_error", false)));
        String second = frontEnd.ask("execute_request", Map.of("code", "'went on'"));
        assertEquals("error", frontEnd.reply(first).text("status"));
        assertEquals("ok", frontEnd.reply(second).text("status"));
    }

    @Test
    void a_question_mark_at_a_word_shows_a_page_and_runs_nothing() {
        int number = latestNumber();
        for (String code : List.of("?fit", "fit?", " ? fit ")) {
            Message reply = frontEnd.run(code).reply();
            JsonObject page = reply.content().getAsJsonArray("payload").get(0).getAsJsonObject();
            assertEquals("page", page.get("source").getAsString());
            assertTrue(page.getAsJsonObject("data").has("text/plain"));
        }
        assertEquals(number, latestNumber());
    }

    private static String result(Exchange cell) {
        return cell.event("execute_result")
                .content()
                .getAsJsonObject("data")
                .get("text/plain")
                .getAsString();
    }

    private static List<String> historyCodes() {
        List<String> codes = new ArrayList<>();
        frontEnd.exchange("history_request", Map.of("hist_access_type", "tail", "n", 1000))
                .reply()
                .content()
                .getAsJsonArray("history")
                .forEach(entry -> codes.add(entry.getAsJsonArray().get(2).getAsString()));
        return codes;
    }
}

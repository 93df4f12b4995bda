package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import headrace.kernel.server.FrontEnd.Message;
import headrace.kernel.session.Outcome;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class QuestionsTest {
    /** 𝜂, one code point, two UTF-16 units. */
    private static final String ETA = "\uD835\uDF02";

    private static final CountDownLatch GATE = new CountDownLatch(1);

    private static Served served;
    private static FrontEnd frontEnd;

    @BeforeAll
    static void serve() {
        served = Served.session(() -> new ScriptedSession((code, output) -> {
            if (code.equals("wait")) {
                passGate();
            }
            return new Outcome.Done();
        }));
        frontEnd = served.frontEnd();
        for (String code : List.of("alpha", "beta", "alpha", "gamma")) {
            frontEnd.run(code);
        }
    }

    private static void passGate() {
        try {
            GATE.await();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    @AfterAll
    static void end() {
        served.close();
    }

    private static Message ask(String type, Map<String, ?> content) {
        return frontEnd.exchange(type, content).reply();
    }

    @Test
    void cursors_of_a_completion_are_counted_in_code_points() {
        String code = ETA + ETA + " fl " + ETA;
        Message reply = ask("complete_request", Map.of("code", code, "cursor_pos", 5));
        assertEquals(3, reply.whole("cursor_start"));
        assertEquals(5, reply.whole("cursor_end"));
        assertEquals("flow", reply.content().getAsJsonArray("matches").get(0).getAsString());
        JsonObject typed = reply.content()
                .getAsJsonObject("metadata")
                .getAsJsonArray("_jupyter_types_experimental")
                .get(0)
                .getAsJsonObject();
        assertEquals("flow", typed.get("text").getAsString());
        assertEquals("word", typed.get("type").getAsString());
        assertEquals("at 7", typed.get("signature").getAsString());
        assertEquals(3, typed.get("start").getAsInt());
        assertEquals(5, typed.get("end").getAsInt());
    }

    @Test
    void a_cursor_outside_the_code_is_taken_for_its_nearest_end() {
        assertEquals(
                2,
                ask("complete_request", Map.of("code", "fl", "cursor_pos", 99)).whole("cursor_end"));
        assertEquals(
                0,
                ask("complete_request", Map.of("code", "fl", "cursor_pos", -1)).whole("cursor_end"));
        assertEquals(2, ask("complete_request", Map.of("code", "fl")).whole("cursor_end"));
    }

    @Test
    void an_explanation_is_found_at_a_cursor_in_code_points() {
        Message reply = ask("inspect_request", Map.of("code", ETA + "x", "cursor_pos", 1, "detail_level", 1));
        assertEquals("ok", reply.text("status"));
        assertTrue(reply.content().get("found").getAsBoolean());
        assertEquals(
                ETA + " in detail 1",
                reply.content().getAsJsonObject("data").get("text/plain").getAsString());
    }

    @Test
    void where_there_is_nothing_to_explain_the_reply_says_so() {
        Message reply = ask("inspect_request", Map.of("code", " ", "cursor_pos", 1));
        assertEquals("ok", reply.text("status"));
        assertFalse(reply.content().get("found").getAsBoolean());
        assertEquals(0, reply.content().getAsJsonObject("data").size());
    }

    @Test
    void code_that_needs_more_lines_has_an_indent() {
        Message reply = ask("is_complete_request", Map.of("code", "if (x) {"));
        assertEquals("incomplete", reply.text("status"));
        assertEquals("  ", reply.text("indent"));
    }

    private static List<String> history(Map<String, ?> choice) {
        List<String> cells = new ArrayList<>();
        ask("history_request", choice).content().getAsJsonArray("history").forEach(entry -> {
            JsonArray cell = entry.getAsJsonArray();
            cells.add(cell.get(1).getAsInt() + " " + cell.get(2).getAsString());
        });
        return cells;
    }

    @Test
    void the_tail_of_the_history_is_its_latest_cells_oldest_first() {
        assertEquals(List.of("3 alpha", "4 gamma"), history(Map.of("hist_access_type", "tail", "n", 2)));
    }

    @Test
    void a_range_ends_before_its_stop_and_belongs_to_one_session() {
        Map<String, Object> range = new HashMap<>(Map.of("hist_access_type", "range", "session", 0));
        range.putAll(Map.of("start", 2, "stop", 4));
        assertEquals(List.of("2 beta", "3 alpha"), history(range));
        range.put("session", 1);
        assertEquals(List.of("2 beta", "3 alpha"), history(range));
        range.put("session", -1);
        assertEquals(List.of(), history(range));
        range.put("session", 0);
        range.remove("stop");
        assertEquals(List.of("2 beta", "3 alpha", "4 gamma"), history(range).subList(0, 3));
    }

    @Test
    void a_search_knows_stars_and_question_marks_and_can_leave_out_what_is_equal() {
        Map<String, Object> search = new HashMap<>(Map.of("hist_access_type", "search", "pattern", "al*a"));
        assertEquals(List.of("1 alpha", "3 alpha"), history(search));
        search.put("unique", true);
        assertEquals(List.of("3 alpha"), history(search));
        search.put("pattern", "?eta");
        assertEquals(List.of("2 beta"), history(search));
        search.put("pattern", ".*");
        assertEquals(List.of(), history(search));
        search.putAll(Map.of("pattern", "*a*", "n", 1));
        assertEquals(List.of("4 gamma"), history(search));
    }

    @Test
    void history_with_output_pairs_a_cell_with_its_result() {
        JsonArray entry = ask(
                        "history_request", Map.of("hist_access_type", "range", "start", 4, "stop", 5, "output", true))
                .content()
                .getAsJsonArray("history")
                .get(0)
                .getAsJsonArray();
        assertEquals("gamma", entry.get(2).getAsJsonArray().get(0).getAsString());
        assertEquals("result of gamma", entry.get(2).getAsJsonArray().get(1).getAsString());
    }

    @Test
    void questions_are_answered_while_a_cell_runs_and_the_kernel_then_says_again_that_it_is_busy() {
        String cell = frontEnd.ask("execute_request", Map.of("code", "wait"));
        frontEnd.awaitEvent(event -> event.answers(cell) && event.type().equals("execute_input"));
        for (String type : List.of(
                "complete_request",
                "inspect_request",
                "is_complete_request",
                "history_request",
                "comm_info_request",
                "kernel_info_request")) {
            String id = frontEnd.ask(type, Map.of("code", "fl"));
            assertTrue(frontEnd.reply(id).content().has("status"));
            frontEnd.eventsOf(id);
        }
        frontEnd.commandReply(frontEnd.command("kernel_info_request", Map.of()));
        List<Message> before = frontEnd.heardOf(cell);
        assertFalse(before.stream().anyMatch(event -> event.isStatus("idle")), "the cell still runs");
        GATE.countDown();
        frontEnd.reply(cell);
        List<Message> all = frontEnd.eventsOf(cell);
        assertTrue(all.stream().filter(event -> event.isStatus("busy")).count() > 1, "busy again");
        assertEquals(1, all.stream().filter(event -> event.isStatus("idle")).count());
    }
}

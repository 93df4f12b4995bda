package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import headrace.kernel.comm.Half;
import headrace.kernel.comm.Pair;
import headrace.kernel.message.Comm;
import headrace.kernel.server.FrontEnd.Message;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Objects with a twin in a front end, opened from either side, over real sockets. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CommsTest {
    private final List<String> heard = new ArrayList<>();
    private final AtomicReference<Pair> opened = new AtomicReference<>();
    private Served served;
    private FrontEnd frontEnd;

    /** Says back what it hears, with the bytes that came with it. */
    private final class Echo implements Half {
        @Override
        public void hears(Pair pair, Comm.Data message) {
            heard.add(String.valueOf(message.data()));
            pair.send(message.data(), Map.of("of", "echo"), message.buffers());
        }

        @Override
        public void ended(Comm.Close message) {
            heard.add("ended");
        }
    }

    @BeforeEach
    void serve() {
        served = Served.session(() -> new ScriptedSession(this::cell));
        frontEnd = served.frontEnd();
    }

    @AfterEach
    void end() {
        served.close();
    }

    private Outcome cell(String code, Output output) {
        if (code.equals("open")) {
            Map<String, Object> version = Map.of("version", "2.1.0");
            List<byte[]> bytes = List.of(new byte[] {7});
            opened.set(served.kernel().comms().open("gauge", Map.of("at", 1), version, bytes, new Echo()));
        } else if (code.equals("close")) {
            opened.get().close();
        }
        return new Outcome.Done();
    }

    private static List<String> types(List<Message> events) {
        return events.stream().map(Message::type).toList();
    }

    private JsonObject open(String target) {
        return frontEnd.exchange("comm_info_request", Map.of("target_name", target))
                .reply()
                .content()
                .getAsJsonObject("comms");
    }

    @Test
    void what_a_front_end_opens_and_tells_is_answered_under_the_message_that_caused_it() {
        served.kernel().comms().register("dial", (pair, opening) -> {
            pair.send(Map.of("hello", opening.data().get("at")));
            return new Echo();
        });
        String opening =
                frontEnd.ask("comm_open", Map.of("comm_id", "d1", "target_name", "dial", "data", Map.of("at", 3)));
        List<Message> first = frontEnd.eventsOf(opening);
        assertEquals(List.of("status", "comm_msg", "status"), types(first));
        assertEquals(
                3, first.get(1).content().getAsJsonObject("data").get("hello").getAsInt());
        assertEquals("dial", open("").getAsJsonObject("d1").get("target_name").getAsString());

        byte[] bytes = {1, 0, -1};
        String telling = frontEnd.ask("comm_msg", Map.of("comm_id", "d1", "data", Map.of("to", 4)), List.of(bytes));
        List<Message> second = frontEnd.eventsOf(telling);
        assertEquals(List.of("status", "comm_msg", "status"), types(second));
        Message echo = second.get(1);
        assertEquals("d1", echo.text("comm_id"));
        assertEquals(4, echo.content().getAsJsonObject("data").get("to").getAsInt());
        assertEquals("echo", echo.metadata().get("of").getAsString());
        assertArrayEquals(bytes, echo.buffers().get(0));

        frontEnd.eventsOf(frontEnd.ask("comm_close", Map.of("comm_id", "d1", "data", Map.of())));
        assertEquals(List.of("{to=4}", "ended"), heard);
        assertEquals(0, open("").size());
    }

    @Test
    void what_a_cell_opens_is_told_under_the_cell_and_hears_its_twin_until_one_of_them_closes() {
        Message telling = frontEnd.run("open").event("comm_open");
        assertEquals("gauge", telling.text("target_name"));
        assertEquals("2.1.0", telling.metadata().get("version").getAsString());
        assertArrayEquals(new byte[] {7}, telling.buffers().get(0));
        String id = telling.text("comm_id");
        assertTrue(open("gauge").has(id));
        assertFalse(open("dial").has(id), "another target");

        frontEnd.eventsOf(frontEnd.ask("comm_msg", Map.of("comm_id", id, "data", Map.of("to", 5))));
        assertEquals(List.of("{to=5}"), heard);

        assertEquals(id, frontEnd.run("close").event("comm_close").text("comm_id"));
        assertFalse(opened.get().isOpen());
        assertEquals(
                List.of("status", "execute_input", "status"),
                frontEnd.run("close").types());
    }

    @Test
    void a_target_that_fails_refuses_and_the_next_request_is_answered() {
        served.kernel().comms().register("dial", (pair, opening) -> {
            throw new IllegalStateException("no such dial");
        });
        String opening = frontEnd.ask("comm_open", Map.of("comm_id", "d2", "target_name", "dial", "data", Map.of()));
        assertEquals(List.of("status", "comm_close", "status"), types(frontEnd.eventsOf(opening)));
        assertTrue(served.log().contains("no such dial"));
        assertEquals("ok", frontEnd.run("anything").reply().text("status"));
    }

    @Test
    void a_half_that_fails_stays_open_and_nothing_comes_back_that_nobody_asked_for() {
        served.kernel().comms().register("dial", (pair, opening) -> (own, message) -> {
            throw new IllegalStateException("stuck");
        });
        frontEnd.eventsOf(frontEnd.ask("comm_open", Map.of("comm_id", "d3", "target_name", "dial", "data", Map.of())));
        String telling = frontEnd.ask("comm_msg", Map.of("comm_id", "d3", "data", Map.of()));
        assertEquals(List.of("status", "status"), types(frontEnd.eventsOf(telling)));
        String unreadable = frontEnd.ask("comm_msg", Map.of("data", 7));
        assertEquals(List.of("status", "status"), types(frontEnd.eventsOf(unreadable)));
        assertTrue(open("dial").has("d3"));
    }

    @Test
    void an_identity_that_is_open_already_is_not_opened_again() {
        served.kernel().comms().register("dial", (pair, opening) -> new Echo());
        Map<String, ?> opening = Map.of("comm_id", "d4", "target_name", "dial", "data", Map.of());
        frontEnd.eventsOf(frontEnd.ask("comm_open", opening));
        assertEquals(List.of("status", "status"), types(frontEnd.eventsOf(frontEnd.ask("comm_open", opening))));
        assertTrue(open("dial").has("d4"), "the first one lives on");
    }
}

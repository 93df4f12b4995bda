package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.message.Header;
import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CommsAndControlTest {
    @Test
    void an_object_of_an_unknown_target_is_closed_at_once() {
        try (Served served = scripted()) {
            FrontEnd frontEnd = served.frontEnd();
            String id = frontEnd.ask(
                    "comm_open", Map.of("comm_id", "c7", "target_name", "nowhere", "data", Map.of("a", 1)));
            List<Message> events = frontEnd.eventsOf(id);
            assertEquals(
                    List.of("status", "comm_close", "status"),
                    events.stream().map(Message::type).toList());
            assertEquals("c7", events.get(1).text("comm_id"));
            Message info = frontEnd.exchange("comm_info_request", Map.of()).reply();
            assertEquals(0, info.content().getAsJsonObject("comms").size());
        }
    }

    @Test
    void the_control_channel_answers_while_a_cell_runs() {
        try (Served served = Served.groovy()) {
            FrontEnd frontEnd = served.frontEnd();
            String cell = frontEnd.ask("execute_request", Map.of("code", "println 'begun'; while (true) {}"));
            frontEnd.awaitEvent(event -> event.answers(cell) && event.type().equals("stream"));
            Message info = frontEnd.commandReply(frontEnd.command("kernel_info_request", Map.of()));
            assertEquals("kernel_info_reply", info.type());
            frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
            assertEquals("error", frontEnd.reply(cell).text("status"));
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void the_end_is_replied_and_told_to_all_and_then_comes(boolean restart) {
        try (Served served = Served.groovy()) {
            FrontEnd frontEnd = served.frontEnd();
            String cell = frontEnd.ask("execute_request", Map.of("code", "println 'begun'; while (true) {}"));
            frontEnd.awaitEvent(event -> event.answers(cell) && event.type().equals("stream"));
            String id = frontEnd.command("shutdown_request", Map.of("restart", restart));
            Message reply = frontEnd.commandReply(id);
            assertEquals("shutdown_reply", reply.type());
            assertEquals(restart, reply.content().get("restart").getAsBoolean());
            Exchange ending = new Exchange(reply, frontEnd.eventsOf(id));
            assertEquals(
                    restart,
                    ending.event("shutdown_reply").content().get("restart").getAsBoolean());
            served.awaitEnd();
        }
    }

    @Test
    void the_end_can_be_asked_for_over_the_shell_channel_too() {
        try (Served served = scripted()) {
            FrontEnd frontEnd = served.frontEnd();
            assertEquals(
                    "shutdown_reply",
                    frontEnd.exchange("shutdown_request", Map.of()).reply().type());
            served.awaitEnd();
        }
    }

    @Test
    void a_front_end_is_welcomed_with_what_it_listens_to() {
        try (Served served = scripted();
                FrontEnd late = served.another()) {
            Message welcome = late.awaitEvent(event -> event.type().equals("iopub_welcome"));
            assertEquals("", welcome.text("subscription"));
            assertEquals(0, welcome.parent().size());
            assertEquals(List.of(""), welcome.route());
        }
    }

    @Test
    void a_handler_that_breaks_has_its_reply_all_the_same_and_the_next_request_is_answered() {
        try (Served served = Served.session(() -> new ScriptedSession(CommsAndControlTest::breaking))) {
            FrontEnd frontEnd = served.frontEnd();
            for (String code : List.of("heap", "stack", "null")) {
                Exchange cell = frontEnd.run(code);
                assertEquals("error", cell.reply().text("status"));
                assertTrue(cell.events().get(cell.events().size() - 1).isStatus("idle"));
            }
            assertEquals("ok", frontEnd.run("fine").reply().text("status"));
            assertTrue(served.log().contains("OutOfMemoryError"));
        }
    }

    private static Outcome breaking(String code, Output output) {
        return switch (code) {
            case "heap" -> throw new OutOfMemoryError("as if");
            case "stack" -> breaking(code, output);
            case "null" -> throw new NullPointerException();
            default -> new Outcome.Done();
        };
    }

    @Test
    void a_cell_that_comes_before_the_session_is_ready_waits_for_it() {
        CountDownLatch ready = new CountDownLatch(1);
        try (Served served = Served.session(() -> {
            await(ready);
            return new ScriptedSession((code, output) -> new Outcome.Done());
        })) {
            FrontEnd frontEnd = served.frontEnd();
            String cell = frontEnd.ask("execute_request", Map.of("code", "1"));
            assertEquals(
                    "ok",
                    frontEnd.exchange("kernel_info_request", Map.of()).reply().text("status"));
            ready.countDown();
            assertEquals("ok", frontEnd.reply(cell).text("status"));
        }
    }

    private static void await(CountDownLatch ready) {
        try {
            ready.await();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void a_session_that_cannot_be_made_says_why_at_each_cell() {
        try (Served served = Served.session(() -> {
            throw new IllegalStateException("no words found");
        })) {
            FrontEnd frontEnd = served.frontEnd();
            assertEquals(
                    "ok",
                    frontEnd.exchange("kernel_info_request", Map.of()).reply().text("status"));
            Message reply = frontEnd.run("1").reply();
            assertEquals("error", reply.text("status"));
            assertEquals(0, reply.whole("execution_count"));
            assertTrue(reply.text("evalue").contains("no words found"), reply.text("evalue"));
        }
    }

    @Test
    void what_no_request_caused_has_an_empty_parent() {
        assertEquals("{}", Header.NONE.raw());
    }

    private static Served scripted() {
        return Served.session(() -> new ScriptedSession((code, output) -> new Outcome.Done()));
    }
}

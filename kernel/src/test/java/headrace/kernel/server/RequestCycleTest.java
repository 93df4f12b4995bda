package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RequestCycleTest {
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

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "kernel_info_request | kernel_info_reply",
                "execute_request | execute_reply",
                "complete_request | complete_reply",
                "inspect_request | inspect_reply",
                "is_complete_request | is_complete_reply",
                "history_request | history_reply",
                "comm_info_request | comm_info_reply",
                "connect_request | connect_reply",
                "interrupt_request | interrupt_reply"
            })
    void every_request_is_answered_between_busy_and_idle(String request, String reply) {
        Exchange exchange = frontEnd.exchange(request, Map.of("code", "1"));
        assertEquals(reply, exchange.reply().type());
        assertTrue(exchange.events().get(0).isStatus("busy"), "begins with busy");
        assertTrue(exchange.events().get(exchange.events().size() - 1).isStatus("idle"), "ends with idle");
        assertEquals(2, exchange.types().stream().filter("status"::equals).count());
    }

    @ParameterizedTest
    @CsvSource({"comm_open", "comm_msg", "comm_close", "debug_request", "rumour"})
    void a_message_without_a_reply_is_still_between_busy_and_idle(String type) {
        String id = frontEnd.ask(type, Map.of("comm_id", "c1", "data", Map.of()));
        List<Message> events = frontEnd.eventsOf(id);
        assertTrue(events.get(0).isStatus("busy"));
        assertTrue(events.get(events.size() - 1).isStatus("idle"));
    }

    @Test
    void the_header_of_the_request_comes_back_whole_as_parent_of_all_that_it_causes() {
        Exchange exchange = frontEnd.run("println 'x'; 1");
        for (Message message : exchange.events()) {
            assertEquals("kept", parentField(message, "not_in_the_protocol"));
        }
        assertEquals("kept", parentField(exchange.reply(), "not_in_the_protocol"));
        assertEquals("execute_request", parentField(exchange.reply(), "msg_type"));
    }

    @Test
    void every_message_carries_the_kernels_own_session() {
        Exchange exchange = frontEnd.run("2");
        String session = headerField(exchange.reply(), "session");
        assertNotEquals(frontEnd.session(), session);
        for (Message message : exchange.events()) {
            assertEquals(session, headerField(message, "session"));
        }
        assertEquals(
                session,
                headerField(frontEnd.exchange("kernel_info_request", Map.of()).reply(), "session"));
    }

    @Test
    void a_topic_is_one_frame_and_names_the_kind() {
        for (Message message : frontEnd.run("println 3").events()) {
            assertEquals(1, message.route().size());
            assertTrue(
                    message.route().get(0).endsWith("." + message.type()),
                    message.route().get(0));
        }
    }

    @Test
    void an_honest_request_that_cannot_be_understood_is_answered_with_what_is_wrong() {
        Message reply = frontEnd.exchange("complete_request", Map.of("code", 7)).reply();
        assertEquals("complete_reply", reply.type());
        assertEquals("error", reply.text("status"));
        assertTrue(reply.text("evalue").contains("code"), reply.text("evalue"));
    }

    @Test
    void a_cell_that_cannot_be_understood_is_answered_with_the_latest_number() {
        frontEnd.run("4");
        Message reply =
                frontEnd.exchange("execute_request", Map.of("silent", 1)).reply();
        assertEquals("error", reply.text("status"));
        assertTrue(reply.whole("execution_count") > 0);
    }

    @Test
    void kernel_info_says_all_that_a_front_end_colours_saves_and_decides_by() {
        Message reply = frontEnd.exchange("kernel_info_request", Map.of()).reply();
        assertEquals("ok", reply.text("status"));
        assertEquals("5.5", reply.text("protocol_version"));
        assertEquals("headrace", reply.text("implementation"));
        Map<String, JsonElement> language =
                reply.content().getAsJsonObject("language_info").asMap();
        assertEquals("groovy", language.get("name").getAsString());
        assertEquals("text/x-groovy", language.get("mimetype").getAsString());
        assertEquals(".groovy", language.get("file_extension").getAsString());
        assertEquals("groovy", language.get("pygments_lexer").getAsString());
        assertEquals("groovy", language.get("codemirror_mode").getAsString());
        assertEquals("A banner", reply.text("banner"));
        assertTrue(reply.content().get("supported_features").isJsonArray());
        assertTrue(reply.content().get("help_links").isJsonArray());
    }

    @Test
    void the_heartbeat_sends_back_what_comes() {
        byte[] any = {0, 1, (byte) 0xff, 'x'};
        assertArrayEquals(any, frontEnd.beat(any));
        assertArrayEquals(new byte[0], frontEnd.beat(new byte[0]));
    }

    @Test
    void a_second_front_end_hears_what_the_first_one_causes_but_not_its_replies() {
        try (FrontEnd other = served.another()) {
            String id = frontEnd.ask("execute_request", Map.of("code", "println 'for all'"));
            frontEnd.reply(id);
            assertEquals("for all\n", new Exchange(null, other.eventsOf(id)).printed("stdout"));
        }
    }

    private static String parentField(Message message, String name) {
        return message.parent().get(name).getAsString();
    }

    private static String headerField(Message message, String name) {
        return message.header().get(name).getAsString();
    }
}

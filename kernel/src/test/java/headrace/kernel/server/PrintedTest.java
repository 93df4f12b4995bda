package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PrintedTest {
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

    private static List<Message> streams(Exchange cell) {
        return cell.events().stream()
                .filter(event -> event.type().equals("stream"))
                .toList();
    }

    @Test
    void of_twenty_thousand_lines_none_is_lost_and_they_travel_in_few_messages() {
        Exchange cell = frontEnd.run("for (int i = 0; i < 20000; i++) println i");
        String all = IntStream.range(0, 20000).mapToObj(i -> i + "\n").collect(Collectors.joining());
        assertEquals(all, cell.printed("stdout"));
        // 108,890 characters: 2 by size, and the rest by time only if this machine stalls for seconds
        assertTrue(streams(cell).size() <= 40, streams(cell).size() + " messages");
    }

    @Test
    void the_two_streams_keep_their_order() {
        Exchange cell = frontEnd.run("print 'a'; System.err.print('b'); print 'c'; System.err.print('d')");
        assertEquals(
                List.of("stdout a", "stderr b", "stdout c", "stderr d"),
                streams(cell).stream()
                        .map(event -> event.text("name") + " " + event.text("text"))
                        .toList());
    }

    @Test
    void what_is_printed_comes_before_the_failure_that_follows() {
        Exchange cell = frontEnd.run("print 'before'; throw new Exception()");
        assertEquals(List.of("status", "execute_input", "stream", "error", "status"), cell.types());
    }

    @Test
    void a_printed_line_is_seen_while_the_cell_still_runs() {
        String id = frontEnd.ask("execute_request", java.util.Map.of("code", "println 'now'; sleep 600_000"));
        frontEnd.awaitEvent(event -> event.answers(id) && event.type().equals("stream"));
        assertFalse(frontEnd.heardOf(id).stream().anyMatch(event -> event.isStatus("idle")));
        frontEnd.commandReply(frontEnd.command("interrupt_request", java.util.Map.of()));
        assertEquals("error", frontEnd.reply(id).text("status"));
    }

    @Test
    void a_thread_that_a_cell_left_behind_still_prints_under_that_cell() {
        Exchange first = frontEnd.run("Thread.start { sleep 400; println 'from behind' }; null");
        String id = first.reply().parent().get("msg_id").getAsString();
        frontEnd.run("println 'another cell'");
        Message late = frontEnd.awaitEvent(
                event -> event.type().equals("stream") && event.text("text").contains("from behind"));
        assertTrue(late.answers(id), "parent " + late.parent());
    }

    @Test
    void characters_beyond_the_basic_plane_are_not_torn_apart() {
        String eta = "\uD835\uDF02"; // 𝜂, two UTF-16 units
        Exchange cell = frontEnd.run("40_000.times { print '" + eta + "' }");
        assertEquals(eta.repeat(40_000), cell.printed("stdout"));
    }

    @Test
    void a_cell_that_prints_without_end_is_cut_off_with_one_notice() {
        Exchange cell = frontEnd.run("long_line = 'x' * 1_000_000; 12.times { print long_line }");
        assertEquals(8_000_000, cell.printed("stdout").length());
        assertTrue(cell.printed("stderr").contains("8,000,000 characters"));
        assertEquals(
                1,
                streams(cell).stream()
                        .filter(event -> event.text("name").equals("stderr"))
                        .count());
        assertEquals("heard again\n", frontEnd.run("println 'heard again'").printed("stdout"));
    }
}

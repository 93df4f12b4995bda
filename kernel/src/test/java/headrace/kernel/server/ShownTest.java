package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import headrace.kernel.session.Outcome;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ShownTest {
    private static Served served;
    private static FrontEnd frontEnd;

    @BeforeAll
    static void serve() {
        served = Served.session(() -> new ScriptedSession((code, output) -> {
            output.print("before ");
            switch (code) {
                case "show" -> output.show(MimeBundle.plain("a"), Optional.empty());
                case "show named" -> output.show(MimeBundle.plain("a"), Optional.of("n1"));
                case "update" -> output.update(MimeBundle.plain("b"), "n1");
                case "calculate" -> {
                    output.progress(new HowFar("hours", 0.4, Optional.of(Duration.ofSeconds(25))));
                    output.progress(new HowFar("hours", 0.5, Optional.of(Duration.ofSeconds(20))));
                    output.progressEnded();
                }
                case "clear" -> output.clear(false);
                case "clear later" -> output.clear(true);
                default -> {
                    return new Outcome.Value(new MimeBundle(Map.of(
                            "text/plain", "plain",
                            "image/svg+xml", "<svg/>",
                            "application/json", "{\"n\": [1, 2.5, 12345678901234567890], \"bad\": 1e999}",
                            "application/vnd.ours+json", "no json")));
                }
            }
            return new Outcome.Done();
        }));
        frontEnd = served.frontEnd();
    }

    @AfterAll
    static void end() {
        served.close();
    }

    private static String plain(Message event) {
        return event.content().getAsJsonObject("data").get("text/plain").getAsString();
    }

    @Test
    void what_is_shown_comes_after_what_was_printed_before_it() {
        Exchange cell = frontEnd.run("show");
        assertEquals(List.of("status", "execute_input", "stream", "display_data", "status"), cell.types());
        assertEquals("a", plain(cell.event("display_data")));
        assertEquals(
                0,
                cell.event("display_data")
                        .content()
                        .getAsJsonObject("transient")
                        .size());
    }

    @Test
    void what_is_shown_under_a_name_can_be_shown_anew_by_a_later_cell() {
        JsonObject first = frontEnd.run("show named").event("display_data").content();
        assertEquals("n1", first.getAsJsonObject("transient").get("display_id").getAsString());
        Message update = frontEnd.run("update").event("update_display_data");
        assertEquals("b", plain(update));
        assertEquals(
                "n1",
                update.content().getAsJsonObject("transient").get("display_id").getAsString());
    }

    @Test
    void how_far_a_calculation_is_stands_in_one_place_of_its_cell_that_is_empty_at_the_end() {
        Exchange cell = frontEnd.run("calculate");
        List<Message> drawn = cell.events().stream()
                .filter(event -> event.type().endsWith("display_data"))
                .toList();
        assertEquals(
                List.of("display_data", "update_display_data", "update_display_data"),
                drawn.stream().map(Message::type).toList());
        assertTrue(plain(drawn.get(0)).startsWith("hours: 40 %, about 25 s left ["), plain(drawn.get(0)));
        String bar =
                drawn.get(1).content().getAsJsonObject("data").get("text/html").getAsString();
        assertTrue(bar.contains("value=\"50\"") && bar.contains("about 20 s left"), bar);
        assertEquals("", plain(drawn.get(2)));
        assertEquals(
                1,
                drawn.stream()
                        .map(event -> event.content()
                                .getAsJsonObject("transient")
                                .get("display_id")
                                .getAsString())
                        .distinct()
                        .count());
        String another = frontEnd.run("calculate")
                .event("display_data")
                .content()
                .getAsJsonObject("transient")
                .get("display_id")
                .getAsString();
        assertFalse(drawn.get(0).content().toString().contains(another), "each cell has a place of its own");
    }

    @Test
    void a_cell_can_take_away_what_it_showed() {
        assertFalse(frontEnd.run("clear")
                .event("clear_output")
                .content()
                .get("wait")
                .getAsBoolean());
        assertTrue(frontEnd.run("clear later")
                .event("clear_output")
                .content()
                .get("wait")
                .getAsBoolean());
    }

    @Test
    void every_form_of_a_value_travels_and_json_travels_as_json() {
        JsonObject data =
                frontEnd.run("value").event("execute_result").content().getAsJsonObject("data");
        assertEquals("plain", data.get("text/plain").getAsString());
        assertEquals("<svg/>", data.get("image/svg+xml").getAsString());
        JsonObject json = data.getAsJsonObject("application/json");
        assertEquals("[1,2.5,12345678901234567890]", json.get("n").toString());
        assertEquals("no json", data.get("application/vnd.ours+json").getAsString());
    }
}

package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** A what-if as live controls of a front end, over real sockets. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class WidgetsTest {
    private static final String VIEW = "application/vnd.jupyter.widget-view+json";

    private static final Pattern PART = Pattern.compile("IPY_MODEL_([0-9a-f-]+)");

    /** Keeps where it was drawn, so that the drawings can be counted. */
    private static final String MOVED = """
            drawn = []
            whatIf(speed: slider(20.percent, 60.percent, positions: 41), liquid: ['water', 'brine'], warm: false) {
                s, l, w -> drawn << s; println "seen"; "$l at $s, warm $w" }
            """;

    private Served served;
    private FrontEnd frontEnd;

    @BeforeEach
    void serve() {
        served = Served.groovy();
        frontEnd = served.frontEnd();
    }

    @AfterEach
    void end() {
        served.close();
    }

    /** The widgets that a cell opened, as a front end knows them. */
    private final class Seen {
        private final Map<String, JsonObject> states = new LinkedHashMap<>();
        private final String root;

        Seen(Exchange cell) {
            cell.events().stream()
                    .filter(event -> event.type().equals("comm_open"))
                    .forEach(open -> states.put(
                            open.text("comm_id"),
                            open.content().getAsJsonObject("data").getAsJsonObject("state")));
            root = forms(cell).getAsJsonObject(VIEW).get("model_id").getAsString();
        }

        /** Returns the widgets of a kind, by the order in which they stand in the root. */
        List<String> of(String model) {
            List<String> found = new ArrayList<>();
            for (JsonElement child : states.get(root).getAsJsonArray("children")) {
                String id = child.getAsString().replace("IPY_MODEL_", "");
                if (states.get(id).get("_model_name").getAsString().equals(model)) {
                    found.add(id);
                }
            }
            return found;
        }

        String slider() {
            return of("SelectionSliderModel").get(0);
        }

        /** Returns the place of what is said. */
        String said() {
            return of("HTMLModel").get(2);
        }
    }

    private static JsonObject forms(Exchange cell) {
        return cell.event("execute_result").content().getAsJsonObject("data");
    }

    private Seen show(String code) {
        Exchange cell = frontEnd.run(code);
        assertEquals("ok", cell.reply().text("status"), () -> cell.events().toString());
        return new Seen(cell);
    }

    private String move(String id, String trait, Object value) {
        Map<String, Object> data = Map.of("method", "update", "state", Map.of(trait, value), "buffer_paths", List.of());
        return frontEnd.ask("comm_msg", Map.of("comm_id", id, "data", data));
    }

    /** Returns the values that a widget was given in these events, oldest first. */
    private static List<String> values(List<Message> events, String id) {
        List<String> values = new ArrayList<>();
        for (Message event : events) {
            if (event.type().equals("comm_msg") && event.text("comm_id").equals(id)) {
                JsonObject data = event.content().getAsJsonObject("data");
                if (data.get("method").getAsString().equals("update")) {
                    values.add(data.getAsJsonObject("state").get("value").getAsString());
                }
            }
        }
        return values;
    }

    private String drawn() {
        return forms(frontEnd.run("drawn.collect { it.toString() }"))
                .get("text/plain")
                .getAsString();
    }

    @Test
    void a_what_if_is_shown_by_live_controls_beside_its_forms_for_front_ends_without_any() {
        Exchange cell = frontEnd.run(MOVED);
        JsonObject forms = forms(cell);
        assertEquals(2, forms.getAsJsonObject(VIEW).get("version_major").getAsInt());
        assertTrue(forms.get("text/html").getAsString().contains("headrace-whatif"));
        assertTrue(forms.get("text/plain").getAsString().contains("water at 40 %, warm false"));
        for (Message open : cell.events()) {
            if (open.type().equals("comm_open")) {
                assertEquals("jupyter.widget", open.text("target_name"));
                assertEquals("2.1.0", open.metadata().get("version").getAsString());
            }
        }
        Seen seen = new Seen(cell);
        JsonObject slider = seen.states.get(seen.slider());
        assertEquals("speed", slider.get("description").getAsString());
        assertEquals(20, slider.get("index").getAsInt());
        assertEquals("60 %", slider.getAsJsonArray("_options_labels").get(40).getAsString());
        JsonObject choice = seen.states.get(seen.of("DropdownModel").get(0));
        assertEquals("[\"water\",\"brine\"]", choice.get("_options_labels").toString());
        assertFalse(
                seen.states.get(seen.of("CheckboxModel").get(0)).get("value").getAsBoolean());
        assertTrue(
                seen.states.get(seen.said()).get("value").getAsString().contains("water at 40 %"),
                seen.states::toString);
    }

    /** A front end takes a widget apart by the identities of others, so these must be there before. */
    @Test
    void a_widget_is_opened_after_those_that_it_is_made_of() {
        List<String> known = new ArrayList<>();
        for (Message event : frontEnd.run(MOVED).events()) {
            if (event.type().equals("comm_open")) {
                String state = event.content().getAsJsonObject("data").toString();
                Matcher named = PART.matcher(state);
                while (named.find()) {
                    assertTrue(known.contains(named.group(1)), state);
                }
                known.add(event.text("comm_id"));
            }
        }
    }

    @Test
    void what_is_moved_is_drawn_anew_between_the_busy_and_the_idle_of_the_message_that_moved_it() {
        Seen seen = show(MOVED);
        List<Message> slid = frontEnd.eventsOf(move(seen.slider(), "index", 5));
        assertTrue(slid.get(0).isStatus("busy"));
        assertTrue(slid.get(slid.size() - 1).isStatus("idle"));
        assertTrue(values(slid, seen.said()).get(0).contains("water at 25 %, warm false"), slid::toString);
        List<Message> chosen = frontEnd.eventsOf(move(seen.of("DropdownModel").get(0), "index", 1));
        assertTrue(values(chosen, seen.said()).get(0).contains("brine at 25 %, warm false"), chosen::toString);
        List<Message> ticked = frontEnd.eventsOf(move(seen.of("CheckboxModel").get(0), "value", true));
        assertTrue(values(ticked, seen.said()).get(0).contains("brine at 25 %, warm true"), ticked::toString);
        assertTrue(values(ticked, seen.said()).get(0).contains("seen\n"), "what the block prints stands there too");
    }

    @Test
    void of_a_burst_the_last_position_is_drawn_and_those_that_a_newer_one_overtook_are_not() {
        Seen seen = show(MOVED);
        frontEnd.run("drawn.clear()");
        String running = frontEnd.ask("execute_request", Map.of("code", "println 'begun'; sleep 600_000"));
        frontEnd.awaitEvent(event -> event.answers(running) && event.type().equals("stream"));
        List<String> moves = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            moves.add(move(seen.slider(), "index", i));
        }
        // answered behind them, so that all of them have arrived when the cell ends
        frontEnd.reply(frontEnd.ask("kernel_info_request", Map.of()));
        frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
        for (String id : moves.subList(0, 29)) {
            assertEquals(List.of(), values(frontEnd.eventsOf(id), seen.said()));
        }
        assertTrue(values(frontEnd.eventsOf(moves.get(29)), seen.said()).get(0).contains("water at 49 %"));
        assertEquals("[49 %]", drawn());
    }

    @Test
    void a_position_that_does_not_exist_changes_nothing() {
        Seen seen = show(MOVED);
        for (Object wrong : List.of(41, -1, 2.5, "5", true)) {
            List<Message> events = frontEnd.eventsOf(move(seen.slider(), "index", wrong));
            assertEquals(2, events.size(), events::toString);
        }
        List<Message> right = frontEnd.eventsOf(move(seen.slider(), "index", 0));
        assertTrue(values(right, seen.said()).get(0).contains("at 20 %"), right::toString);
    }

    @Test
    void a_refusal_or_an_error_at_a_position_is_said_there_and_the_next_position_is_drawn() {
        Seen seen = show("""
                broken = false
                whatIf(speed: slider(0.percent, 100.percent, positions: 11)) { s ->
                    if (broken && s > 90.percent) { noSuchName }
                    s > 70.percent ? slider(s, s, positios: 3) : "at $s" }
                """);
        frontEnd.run("broken = true");
        List<Message> refused = frontEnd.eventsOf(move(seen.slider(), "index", 8));
        String sentence = values(refused, seen.said()).get(0);
        assertTrue(sentence.contains("positios"), sentence);
        List<Message> failed = frontEnd.eventsOf(move(seen.slider(), "index", 10));
        String fault = values(failed, seen.said()).get(0);
        assertTrue(fault.contains("noSuchName") && fault.contains("Cell 1"), fault);
        List<Message> drawn = frontEnd.eventsOf(move(seen.slider(), "index", 2));
        assertTrue(values(drawn, seen.said()).get(0).contains("at 20 %"), drawn::toString);
    }

    @Test
    void an_interruption_stops_a_drawing_says_so_and_the_next_position_is_drawn() {
        Seen seen = show("""
                endless = false
                whatIf(n: 1..5) { n -> while (endless && n == 5) { System.setProperty('headrace.test.in', 'y') }; "at $n" }
                """);
        System.clearProperty("headrace.test.in");
        frontEnd.run("endless = true");
        String id = move(seen.slider(), "index", 4);
        while (System.getProperty("headrace.test.in") == null) {
            Thread.onSpinWait();
        }
        frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
        String said = values(frontEnd.eventsOf(id), seen.said()).get(0);
        assertTrue(said.contains("stopped"), said);
        List<Message> next = frontEnd.eventsOf(move(seen.slider(), "index", 0));
        assertTrue(values(next, seen.said()).get(0).contains("at 1"), next::toString);
        assertEquals("ok", frontEnd.run("1 + 1").reply().text("status"));
    }

    @Test
    void a_page_that_is_loaded_anew_gets_all_states_at_once_as_they_are_now() {
        Seen seen = show(MOVED);
        frontEnd.eventsOf(move(seen.slider(), "index", 7));
        String opening = frontEnd.ask(
                "comm_open", Map.of("comm_id", "reload", "target_name", "jupyter.widget.control", "data", Map.of()));
        frontEnd.eventsOf(opening);
        String asking =
                frontEnd.ask("comm_msg", Map.of("comm_id", "reload", "data", Map.of("method", "request_states")));
        Message answer = frontEnd.eventsOf(asking).get(1);
        JsonObject data = answer.content().getAsJsonObject("data");
        assertEquals("update_states", data.get("method").getAsString());
        JsonObject states = data.getAsJsonObject("states");
        assertEquals(seen.states.keySet(), states.keySet());
        JsonObject slider = states.getAsJsonObject(seen.slider());
        assertEquals("SelectionSliderModel", slider.get("model_name").getAsString());
        assertEquals("2.0.0", slider.get("model_module_version").getAsString());
        assertEquals(7, slider.getAsJsonObject("state").get("index").getAsInt());
        assertTrue(states.getAsJsonObject(seen.said()).toString().contains("water at 27 %"));
    }

    @Test
    void each_widget_tells_its_state_when_asked() {
        Seen seen = show(MOVED);
        String asking =
                frontEnd.ask("comm_msg", Map.of("comm_id", seen.said(), "data", Map.of("method", "request_state")));
        assertTrue(values(frontEnd.eventsOf(asking), seen.said()).get(0).contains("water at 40 %"));
    }

    @Test
    void a_button_puts_all_controls_back_where_they_began_and_draws_that() {
        Seen seen = show(MOVED);
        frontEnd.eventsOf(move(seen.slider(), "index", 3));
        frontEnd.eventsOf(move(seen.of("CheckboxModel").get(0), "value", true));
        String press = frontEnd.ask(
                "comm_msg",
                Map.of(
                        "comm_id",
                        seen.of("ButtonModel").get(0),
                        "data",
                        Map.of("method", "custom", "content", Map.of("event", "click"))));
        List<Message> events = frontEnd.eventsOf(press);
        assertTrue(values(events, seen.said()).get(0).contains("water at 40 %, warm false"), events::toString);
        assertEquals(List.of("false"), values(events, seen.of("CheckboxModel").get(0)));
        assertTrue(
                events.stream()
                        .anyMatch(event -> event.content().toString().contains("\"index\":20")
                                && event.text("comm_id").equals(seen.slider())),
                events::toString);
    }

    @Test
    void another_front_end_hears_where_a_control_was_moved() {
        Seen seen = show(MOVED);
        Message echo = frontEnd.eventsOf(move(seen.slider(), "index", 9)).stream()
                .filter(event -> event.type().equals("comm_msg")
                        && event.content().toString().contains("echo_update"))
                .findFirst()
                .orElseThrow();
        assertEquals(seen.slider(), echo.text("comm_id"));
        assertEquals(
                9,
                echo.content()
                        .getAsJsonObject("data")
                        .getAsJsonObject("state")
                        .get("index")
                        .getAsInt());
    }

    @Test
    void when_a_front_end_closes_the_whole_its_parts_are_closed_too() {
        Seen seen = show(MOVED);
        frontEnd.eventsOf(frontEnd.ask("comm_close", Map.of("comm_id", seen.root, "data", Map.of())));
        assertEquals(0, open());
    }

    @Test
    void only_the_latest_what_ifs_stay_live() {
        int each = show(MOVED).states.size();
        for (int i = 0; i < 40; i++) {
            show(MOVED);
        }
        assertEquals(40 * each, open());
    }

    private int open() {
        return frontEnd.exchange("comm_info_request", Map.of("target_name", "jupyter.widget"))
                .reply()
                .content()
                .getAsJsonObject("comms")
                .size();
    }

    @Test
    void a_cell_whose_output_nobody_hears_opens_no_widgets() {
        frontEnd.exchange("execute_request", Map.of("code", MOVED, "silent", true));
        assertEquals(0, open());
    }

    @Test
    void what_is_shown_on_the_way_is_live_too() {
        Exchange cell = frontEnd.run("show(whatIf(n: 1..3) { n -> \"at $n\" })");
        JsonObject forms = cell.event("display_data").content().getAsJsonObject("data");
        assertTrue(forms.has(VIEW), forms::toString);
    }
}

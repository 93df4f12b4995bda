package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
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
            word = 'seen'
            whatIf(speed: slider(20.percent, 60.percent, positions: 41), liquid: ['water', 'brine'], warm: false) {
                s, l, w -> drawn << s; println word; "$l at $s, warm $w" }
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

        /** Returns the widgets of a kind below the root, from top to bottom. */
        List<String> of(String model) {
            List<String> found = new ArrayList<>();
            collect(root, model, found);
            return found;
        }

        private void collect(String id, String model, List<String> found) {
            JsonObject state = states.get(id);
            if (state.get("_model_name").getAsString().equals(model)) {
                found.add(id);
            }
            if (state.has("children")) {
                for (JsonElement child : state.getAsJsonArray("children")) {
                    collect(child.getAsString().replace("IPY_MODEL_", ""), model, found);
                }
            }
        }

        String slider() {
            return of("SelectionSliderModel").get(0);
        }

        /** Returns the place of what is said in place of a drawing. */
        String trouble() {
            return of("HTMLModel").get(0);
        }

        /** Returns the place of the picture, of a part that stands alone. */
        String picture() {
            return of("HTMLModel").get(1);
        }

        /** Returns the place of what is said beside the picture, of a part that stands alone. */
        String said() {
            return of("HTMLModel").get(2);
        }

        /** Returns the place of what the calculation prints and shows on its way. */
        String aside() {
            return of("HTMLModel").get(of("HTMLModel").size() - 1);
        }
    }

    private static JsonObject forms(Exchange cell) {
        return cell.event("display_data").content().getAsJsonObject("data");
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
        return frontEnd.run("drawn.collect { it.toString() }")
                .event("execute_result")
                .content()
                .getAsJsonObject("data")
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
        assertTrue(values(chosen, seen.aside()).isEmpty(), "what the block prints stands beneath, and is the same");
        frontEnd.run("word = 'changed'");
        List<Message> again = frontEnd.eventsOf(move(seen.slider(), "index", 6));
        assertTrue(values(again, seen.aside()).get(0).contains("changed\n"), again::toString);
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
        String sentence = values(refused, seen.trouble()).get(0);
        assertTrue(sentence.contains("positios"), sentence);
        List<Message> failed = frontEnd.eventsOf(move(seen.slider(), "index", 10));
        String fault = values(failed, seen.trouble()).get(0);
        assertTrue(fault.contains("noSuchName") && fault.contains("Cell 1"), fault);
        List<Message> drawn = frontEnd.eventsOf(move(seen.slider(), "index", 2));
        assertTrue(values(drawn, seen.said()).get(0).contains("at 20 %"), drawn::toString);
    }

    @Test
    void a_slider_shows_its_values_in_the_units_that_an_earlier_cell_chose() {
        frontEnd.run("printedUnits('US')");
        Seen seen = show("whatIf(flow: slider(100.gpm, 200.gpm, positions: 3)) { q -> q }");
        assertEquals(
                "[\"100 gpm\",\"150 gpm\",\"200 gpm\"]",
                seen.states.get(seen.slider()).get("_options_labels").toString());
        List<Message> moved = frontEnd.eventsOf(move(seen.slider(), "index", 2));
        assertTrue(values(moved, seen.said()).get(0).contains("200 gpm"), moved::toString);
    }

    @Test
    void two_drawings_on_a_page_have_no_name_in_common_and_each_finds_its_own() {
        String cell = "whatIf(n: 1..5) { n -> quadratic(duty(52.m3ph, 16.m), minimumHead: (10 * n).percent) }";
        Set<String> names = new HashSet<>();
        for (int each = 0; each < 2; each++) {
            Seen seen = show(cell);
            String picture = seen.states.get(seen.picture()).get("value").getAsString();
            Set<String> own = found("<path id=\"([^\"]+)\"", picture);
            assertFalse(own.isEmpty(), picture);
            assertEquals(own, found("xlink:href=\"#([^\"]+)\"", picture));
            assertTrue(Collections.disjoint(names, own), picture);
            names.addAll(own);
        }
    }

    private static Set<String> found(String pattern, String text) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map(match -> match.group(1))
                .collect(Collectors.toSet());
    }

    @Test
    void an_error_at_a_position_computed_ahead_does_not_fail_the_cell() {
        Seen seen = show(
                "whatIf(n: 1..5) { n -> assert n != 5; if (n == 4) { [][9].x }; n == 3 ? 7.0 : 12.intdiv(n - 1) }");
        List<Message> failed = frontEnd.eventsOf(move(seen.slider(), "index", 4));
        assertTrue(values(failed, seen.trouble()).get(0).contains("assert n != 5"), failed::toString);
        List<Message> divided = frontEnd.eventsOf(move(seen.slider(), "index", 0));
        assertTrue(values(divided, seen.trouble()).get(0).contains("zero"), divided::toString);
        List<Message> drawn = frontEnd.eventsOf(move(seen.slider(), "index", 1));
        assertTrue(values(drawn, seen.said()).get(0).contains("12"), drawn::toString);
    }

    @Test
    void the_cell_hears_what_is_printed_and_shown_where_it_begins_alone() {
        Exchange cell = frontEnd.run("whatIf(n: 1..5) { n -> println \"printed $n\"; show(\"shown $n\"); n }");
        assertEquals(
                List.of("printed 3\n"),
                cell.events().stream()
                        .filter(event -> event.type().equals("stream"))
                        .map(event -> event.text("text"))
                        .toList());
        assertEquals(
                2,
                cell.events().stream()
                        .filter(event -> event.type().equals("display_data"))
                        .count(),
                "what it shows, and the what-if itself");
    }

    @Test
    void what_a_drawing_shows_on_its_way_stands_one_below_the_other() {
        Seen seen = show("""
                shows = false
                whatIf(n: 1..5) { n -> if (shows) {
                    show("first $n"); show("in place $n", place: 'p'); show("anew $n", place: 'p') }
                    n }
                """);
        frontEnd.run("shows = true");
        List<Message> moved = frontEnd.eventsOf(move(seen.slider(), "index", 0));
        String aside = values(moved, seen.aside()).get(0);
        assertTrue(aside.contains("first 1") && aside.indexOf("first 1") < aside.indexOf("anew 1"), aside);
        assertFalse(aside.contains("in place"), aside);
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
        String said = values(frontEnd.eventsOf(id), seen.trouble()).get(0);
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

    private List<Message> press(Seen seen, String label) {
        String button = seen.of("ButtonModel").stream()
                .filter(id ->
                        seen.states.get(id).get("description").getAsString().equals(label))
                .findFirst()
                .orElseThrow();
        Map<String, Object> click = Map.of("method", "custom", "content", Map.of("event", "click"));
        return frontEnd.eventsOf(frontEnd.ask("comm_msg", Map.of("comm_id", button, "data", click)));
    }

    @Test
    void a_preset_is_a_button_that_moves_the_controls_it_names_and_no_others() {
        Seen seen = show("""
                whatIf(load: slider(0.percent, 100.percent, positions: 11), warm: false,
                       nightTime: preset(load: 20.percent)) { l, w -> "load $l, warm $w" }
                """);
        frontEnd.eventsOf(move(seen.of("CheckboxModel").get(0), "value", true));
        List<Message> events = press(seen, "Night time");
        assertTrue(values(events, seen.said()).get(0).contains("load 20 %, warm true"), events::toString);
        assertEquals("{\"index\":2}", update(events, seen.slider()).toString());
        assertEquals(List.of(), values(events, seen.of("CheckboxModel").get(0)));
    }

    /** Returns the last change of a widget's state in these events. */
    private static JsonObject update(List<Message> events, String id) {
        return events.stream()
                .filter(event ->
                        event.type().equals("comm_msg") && event.text("comm_id").equals(id))
                .map(event -> event.content().getAsJsonObject("data").getAsJsonObject("state"))
                .reduce((first, last) -> last)
                .orElseThrow(() -> new AssertionError(id + " is not changed by " + events));
    }

    @Test
    void a_map_stands_behind_tabs_and_the_tab_that_nobody_looks_at_waits_to_be_drawn_until_it_is_chosen() {
        Seen seen = show("whatIf(n: 10..20) { n -> [cold: water(n.degC), warm: water((2 * n).degC)] }");
        String tabs = seen.of("TabModel").get(0);
        assertEquals("[\"cold\",\"warm\"]", seen.states.get(tabs).get("titles").toString());
        String cold = seen.of("HTMLModel").get(2);
        String warm = seen.of("HTMLModel").get(4);
        assertTrue(seen.states.get(warm).get("value").getAsString().contains("30 °C"), seen.states::toString);
        List<Message> slid = frontEnd.eventsOf(move(seen.slider(), "index", 2));
        assertTrue(values(slid, cold).get(0).contains("12 °C"), slid::toString);
        assertFalse(values(slid, warm).get(0).contains("30 °C"), "what held at another position does not stay");
        List<Message> further = frontEnd.eventsOf(move(seen.slider(), "index", 4));
        assertTrue(values(further, cold).get(0).contains("14 °C"), further::toString);
        assertEquals(List.of(), values(further, warm));
        List<Message> chosen = frontEnd.eventsOf(move(tabs, "selected_index", 1));
        assertTrue(values(chosen, warm).get(0).contains("28 °C"), chosen::toString);
        List<Message> again = frontEnd.eventsOf(move(seen.slider(), "index", 3));
        assertTrue(values(again, warm).get(0).contains("26 °C"), again::toString);
        assertEquals(2, frontEnd.eventsOf(move(tabs, "selected_index", 2)).size(), "there is no third tab");
    }

    @Test
    void a_list_stands_in_a_row() {
        Seen seen = show("whatIf(n: 10..20) { n -> [water(n.degC), water((2 * n).degC)] }");
        String row = seen.of("HBoxModel").get(1);
        assertEquals(2, seen.states.get(row).getAsJsonArray("children").size());
        List<Message> slid = frontEnd.eventsOf(move(seen.slider(), "index", 2));
        assertTrue(values(slid, seen.of("HTMLModel").get(2)).get(0).contains("12 °C"), slid::toString);
        assertTrue(values(slid, seen.of("HTMLModel").get(4)).get(0).contains("24 °C"), slid::toString);
    }

    @Test
    void parts_that_change_take_the_place_of_those_before_which_are_closed() {
        Seen seen = show("whatIf(n: 1..3) { n -> n < 3 ? water(10.degC) : [water(10.degC), water(20.degC)] }");
        int before = open();
        List<Message> events = frontEnd.eventsOf(move(seen.slider(), "index", 2));
        String place = seen.of("VBoxModel").get(1);
        String children = update(events, place).getAsJsonArray("children").toString();
        int told = -1;
        for (int i = 0; i < events.size(); i++) {
            if (events.get(i).content().toString().contains(children)) {
                told = i;
            }
        }
        List<String> opened = events.subList(0, told).stream()
                .filter(event -> event.type().equals("comm_open"))
                .map(event -> event.text("comm_id"))
                .toList();
        assertTrue(opened.stream().anyMatch(children::contains), "what it is made of is there before it is told");
        assertTrue(events.stream().anyMatch(event -> event.type().equals("comm_close")), events::toString);
        frontEnd.eventsOf(move(seen.slider(), "index", 0));
        assertEquals(before, open(), "nothing is left behind");
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

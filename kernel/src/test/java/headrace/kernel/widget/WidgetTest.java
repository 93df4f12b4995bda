package headrace.kernel.widget;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.comm.Comms;
import headrace.kernel.message.Comm;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The names are those of ipywidgets 8's schema: base and controls 2.0.0. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class WidgetTest {
    private final Comms comms = new Comms();
    private final List<Comm> told = new ArrayList<>();

    WidgetTest() {
        comms.send(told::add);
    }

    private Comm.Open opened(Widget widget) {
        widget.open(new Widget.Home(comms, each -> {}, each -> {}));
        return (Comm.Open) told.get(told.size() - 1);
    }

    private static Map<?, ?> state(Comm.Open open) {
        return (Map<?, ?>) open.data().get("state");
    }

    @Test
    void bytes_travel_beside_the_state_and_the_message_says_where_they_belong() {
        byte[] picture = {1, 2, 3};
        Comm.Open open = opened(new Widget(Kind.IMAGE, Map.of("format", "png", "value", picture)));
        assertFalse(state(open).containsKey("value"));
        assertEquals("png", state(open).get("format"));
        assertEquals(List.of(List.of("value")), open.data().get("buffer_paths"));
        assertArrayEquals(picture, open.buffers().get(0));
    }

    @Test
    void a_widget_in_a_list_is_named_by_its_identity_and_opened_once() {
        Widget label = new Widget(Kind.LABEL, Map.of("value", "x"));
        Widget row = new Widget(Kind.ROW, Map.of("children", List.of(label)));
        Comm.Open open =
                opened(new Widget(Kind.TABS, Map.of("children", List.of(row, label), "titles", List.of("a", "b"))));
        assertEquals(3, told.size());
        assertEquals(
                List.of("IPY_MODEL_" + row.id(), "IPY_MODEL_" + label.id()),
                state(open).get("children"));
    }

    @Test
    void a_bar_is_drawn_by_the_view_of_all_bars_and_a_style_by_that_of_the_base() {
        Map<?, ?> bar = state(opened(new Widget(Kind.PROGRESS, Map.of("value", 0.3, "max", 1.0))));
        assertEquals("FloatProgressModel", bar.get("_model_name"));
        assertEquals("ProgressView", bar.get("_view_name"));
        Map<?, ?> style = state(opened(new Widget(Kind.SLIDER_STYLE, Map.of())));
        assertEquals("@jupyter-widgets/controls", style.get("_model_module"));
        assertEquals("StyleView", style.get("_view_name"));
        assertEquals("@jupyter-widgets/base", style.get("_view_module"));
    }

    @Test
    void only_what_changes_is_told() {
        Widget label = new Widget(Kind.LABEL, Map.of("value", "x"));
        opened(label);
        label.change("value", "x");
        assertEquals(1, told.size());
        label.change("value", "y");
        assertEquals(Map.of("value", "y"), ((Comm.Data) told.get(1)).data().get("state"));
    }

    /** RFC 896: only what is smaller than a packet is held back; the loopback's carries 65,483 bytes of IPv4. */
    @Test
    void what_somebody_waits_for_fills_a_packet_and_what_is_kept_of_it_is_no_longer_for_that() {
        Widget picture = new Widget(Kind.HTML, Map.of("value", ""));
        opened(picture);
        picture.changeAtOnce("value", "drawn");
        Comm.Data change = (Comm.Data) told.get(1);
        int size =
                change.data().toString().length() + change.metadata().toString().length();
        assertTrue(size > 65_483, size + " bytes");
        assertEquals("drawn", picture.state("value"));
        picture.changeAtOnce("value", "x".repeat(70_000));
        assertEquals("{filling=}", ((Comm.Data) told.get(2)).metadata().toString());
    }

    @Test
    void what_nobody_lets_a_front_end_move_it_does_not_move() {
        Widget label = new Widget(Kind.LABEL, Map.of("value", "x"));
        opened(label);
        Map<String, Object> change = Map.of("method", "update", "state", Map.of("value", "forged"));
        comms.receive(new Comm.Data(label.id(), change, Map.of(), List.of()));
        assertEquals("x", label.state("value"));
    }
}

package headrace.report.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Ratio;
import java.awt.image.BufferedImage;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class WhatIfTest {
    private static final Control HEAD =
            Control.slider("head", Ratio.percent(20), Ratio.percent(60), 5, Ratio.percent(42));

    @Test
    void a_slider_goes_in_equal_steps_and_begins_at_the_nearest() {
        assertEquals(List.of("20 %", "30 %", "40 %", "50 %", "60 %"), HEAD.labels());
        assertEquals(2, HEAD.start());
        assertEquals(Ratio.percent(60), HEAD.positions().get(4));
    }

    @Test
    void a_slider_may_go_down() {
        Control down = Control.slider("x", 10, 0, 3, 10);
        assertEquals(List.of(10.0, 5.0, 0.0), down.positions());
        assertEquals(0, down.start());
    }

    @Test
    void the_calculation_takes_the_values_in_the_order_of_the_controls() {
        WhatIf whatIf = WhatIf.of(
                List.of(HEAD, Control.choice("pump", List.of("a", "b")), Control.onOff("drive", true)),
                values -> values.toString());
        assertEquals(List.of(2, 0, 1), whatIf.start());
        assertEquals("[30 %, b, false]", text(whatIf.at(List.of(1, 1, 0))));
    }

    @Test
    void all_positions_are_computed_ahead_with_the_last_control_moving_fastest() {
        WhatIf whatIf =
                WhatIf.of(List.of(Control.onOff("a", false), Control.choice("b", List.of(1, 2, 3))), values -> values);
        List<List<Integer>> at = whatIf.frames().stream().map(Frame::at).toList();
        assertEquals(
                List.of(List.of(0, 0), List.of(0, 1), List.of(0, 2), List.of(1, 0), List.of(1, 1), List.of(1, 2)), at);
    }

    @Test
    void thinning_keeps_both_ends_and_the_start_of_each_slider() {
        for (int most = 4; most <= 125; most += 11) {
            Control fine = Control.slider(
                    "flow", Flow.cubicMetresPerHour(0), Flow.cubicMetresPerHour(100), 101, Flow.cubicMetresPerHour(37));
            WhatIf thin = WhatIf.of(List.of(fine, HEAD), values -> "").thinned(most);
            Control left = thin.controls().get(0);
            assertTrue(
                    thin.controls().stream().mapToInt(c -> c.positions().size()).reduce(1, (a, b) -> a * b) <= most);
            assertEquals(fine.positions().get(0), left.positions().get(0));
            assertEquals(
                    fine.positions().get(100),
                    left.positions().get(left.positions().size() - 1));
            if (left.positions().size() > 2) {
                assertEquals(fine.positions().get(37), left.positions().get(left.start()));
            }
        }
    }

    @Test
    void a_refusal_at_a_position_is_what_is_shown_there() {
        WhatIf whatIf = WhatIf.of(List.of(Control.onOff("a", false)), values -> {
            throw new Refusal(WhatIfProblem.IMPOSSIBLE_CONTROL, "Asked", "Possible", "Next");
        });
        Frame frame = whatIf.at(List.of(1));
        assertEquals(Frame.Arrangement.REFUSED, frame.arrangement());
        assertTrue(text(frame).contains("Possible"));
    }

    @Test
    void an_error_at_a_position_is_what_is_shown_there_ahead() {
        WhatIf whatIf = WhatIf.of(List.of(Control.choice("a", List.of(0, 3))), values -> 12 / (int) values.get(0));
        List<Frame> frames = whatIf.frames();
        assertEquals(Frame.Arrangement.REFUSED, frames.get(0).arrangement());
        assertTrue(text(frames.get(0)).contains("ArithmeticException: / by zero"));
        assertEquals("4", text(frames.get(1)));
        assertThrows(ArithmeticException.class, () -> whatIf.at(List.of(0)));
    }

    @Test
    void what_cannot_be_moved_is_refused() {
        refused(() -> WhatIf.of(List.of(), values -> ""));
        refused(() -> Control.choice("one", List.of(1)));
        refused(() -> Control.slider("x", Ratio.percent(3), Ratio.percent(3), 5, Ratio.percent(3)));
        refused(() -> Control.slider("x", 3, 3, 5, 3));
        refused(() -> Control.slider("x", 0, Double.POSITIVE_INFINITY, 5, 1));
        refused(() -> Control.slider("x", 0, 10, 5, 11));
        refused(() -> Control.slider("x", Ratio.percent(3), Ratio.percent(9), 5, Ratio.percent(10)));
        Control many = Control.choice("many", IntStream.range(0, 30).boxed().toList());
        refused(() -> WhatIf.of(List.of(many, many), values -> "").thinned(125));
    }

    @Test
    void a_preset_moves_the_controls_that_it_names_and_leaves_the_others_where_they_are() {
        Preset night = new Preset("night", List.of(4, Preset.STAYS, 0));
        assertEquals(List.of(4, 7, 0), night.from(List.of(1, 7, 2)));
    }

    @Test
    void a_value_names_the_nearest_position_of_a_slider_and_the_same_of_a_choice() {
        assertEquals(0, HEAD.indexOf(Ratio.percent(20)));
        assertEquals(1, HEAD.indexOf(Ratio.percent(34)));
        assertEquals(4, HEAD.indexOf(Ratio.percent(60)));
        assertEquals(1, Control.choice("pump", List.of("a", "b")).indexOf("b"));
        assertEquals(1, Control.onOff("on", false).indexOf(true));
        assertEquals(2, Control.slider("n", 10, 0, 3, 0).indexOf(0));
        refused(() -> HEAD.indexOf(Ratio.percent(61)));
        refused(() -> HEAD.indexOf(Flow.cubicMetresPerHour(30)));
        refused(() -> HEAD.indexOf(30));
        refused(() -> Control.choice("pump", List.of("a", "b")).indexOf("c"));
    }

    @Test
    void thinning_keeps_what_presets_name_as_long_as_there_is_room() {
        Control fine = Control.slider(
                "flow", Flow.cubicMetresPerHour(0), Flow.cubicMetresPerHour(100), 101, Flow.cubicMetresPerHour(37));
        List<Preset> presets = List.of(new Preset("night", List.of(13)), new Preset("day", List.of(88)));
        for (int most = 5; most <= 100; most++) {
            WhatIf thin =
                    WhatIf.of(List.of(fine), values -> "").withPresets(presets).thinned(most);
            List<Object> left = thin.controls().get(0).positions();
            assertEquals(most, left.size());
            assertEquals(
                    fine.positions().get(13),
                    left.get(thin.presets().get(0).at().get(0)));
            assertEquals(
                    fine.positions().get(88),
                    left.get(thin.presets().get(1).at().get(0)));
            assertEquals(fine.positions().get(37), left.get(thin.start().get(0)));
            assertEquals(left.stream().distinct().count(), left.size());
        }
    }

    @Test
    void a_map_of_results_is_drawn_behind_tabs_and_a_list_of_them_side_by_side() {
        Frame tabs = frame(Map.of("verdict", Shown.line("passes")));
        assertEquals(Frame.Arrangement.TABS, tabs.arrangement());
        assertEquals("verdict", tabs.parts().get(0).name());
        assertEquals("passes", tabs.parts().get(0).text(100));
        Frame row = frame(List.of(Shown.line("before"), "text", Shown.line("after")));
        assertEquals(Frame.Arrangement.ROW, row.arrangement());
        assertEquals(
                List.of("before", "text", "after"),
                row.parts().stream().map(part -> part.text(100)).toList());
        assertEquals(
                Frame.Arrangement.ROW,
                frame(List.of(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB)))
                        .arrangement());
    }

    @Test
    void what_an_optional_value_or_an_array_holds_is_drawn() {
        Shown passes = Shown.line("passes");
        assertEquals("passes", text(frame(Optional.of(passes))));
        assertEquals("passes", text(frame(Map.of("verdict", Optional.of(passes)))));
        assertEquals(2, frame(new Object[] {passes, "text"}).parts().size());
        assertEquals("[1, 2]", text(frame(new Integer[] {1, 2})));
    }

    @Test
    void a_map_or_list_of_plain_values_is_drawn_as_it_is() {
        assertEquals("[1, 2]", text(frame(List.of(1, 2))));
        assertEquals("{speed=30 %}", text(frame(Map.of("speed", Ratio.percent(30)))));
        assertEquals(
                Frame.Arrangement.ALONE,
                frame(IntStream.range(0, 100_000).boxed().toList()).arrangement());
    }

    @Test
    void a_frame_is_drawn_in_the_place_of_one_with_the_same_names() {
        Frame a = frame(Map.of("verdict", Shown.line("passes")));
        assertTrue(a.isLike(frame(Map.of("verdict", Shown.line("fails")))));
        assertFalse(a.isLike(frame(Map.of("year", Shown.line("fails")))));
        assertFalse(a.isLike(frame(Shown.line("fails"))));
    }

    @Test
    void more_than_anyone_could_look_at_is_refused_at_its_position() {
        List<Shown> five = Collections.nCopies(5, Shown.line("one"));
        Frame frame = frame(five);
        assertEquals(Frame.Arrangement.REFUSED, frame.arrangement());
        assertTrue(text(frame).contains("5 things at once"), text(frame));
    }

    private static Frame frame(Object value) {
        return WhatIf.of(List.of(Control.onOff("a", false)), values -> value).at(List.of(0));
    }

    private static String text(Frame frame) {
        assertEquals(1, frame.parts().size());
        return frame.parts().get(0).text(100);
    }

    private static void refused(Runnable attempt) {
        Problem problem = assertThrows(Refusal.class, attempt::run).problem();
        assertEquals(WhatIfProblem.IMPOSSIBLE_CONTROL, problem);
    }
}

package headrace.report.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Ratio;
import java.util.List;
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
        assertEquals("[30 %, b, false]", whatIf.at(List.of(1, 1, 0)).shown().title());
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
        assertTrue(whatIf.at(List.of(1)).text().contains("Possible"));
    }

    @Test
    void what_cannot_be_moved_is_refused() {
        refused(() -> WhatIf.of(List.of(), values -> ""));
        refused(() -> Control.choice("one", List.of(1)));
        refused(() -> Control.slider("x", Ratio.percent(3), Ratio.percent(3), 5, Ratio.percent(3)));
        Control many = Control.choice("many", IntStream.range(0, 30).boxed().toList());
        refused(() -> WhatIf.of(List.of(many, many), values -> "").thinned(125));
    }

    private static void refused(Runnable attempt) {
        Problem problem = assertThrows(Refusal.class, attempt::run).problem();
        assertEquals(WhatIfProblem.IMPOSSIBLE_CONTROL, problem);
    }
}

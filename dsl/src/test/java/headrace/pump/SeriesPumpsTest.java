package headrace.pump;

import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Ratio;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SeriesPumpsTest {
    private static DoubleUnaryOperator system(double lift, double perSquare) {
        return q -> lift + perSquare * (q * 3600) * (q * 3600);
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }

    /** 80 − 0.005·Q² = 10 + 0.0015·Q²: Q = √(70/0.0065) = 103.77490 m³/h, H = 26.15385 m. */
    @Test
    void two_equal_pumps_meet_a_system_where_the_closed_form_says() {
        SeriesPoint point =
                SeriesPumps.of(List.of(Parabolas.steep(), Parabolas.steep())).meeting(system(10, 0.0015), "system");
        assertEquals(Math.sqrt(70 / 0.0065), point.flow().toCubicMetresPerHour(), 1e-10 * 103.8);
        assertEquals(103.77490, point.flow().toCubicMetresPerHour(), 5e-6);
        assertEquals(10 + 0.0015 * 70 / 0.0065, point.head().metres(), 1e-10 * 26);
        assertEquals(2 * point.points().get(0).head().si(), point.head().si(), 1e-12);
    }

    /** At the flow Q the second, at half speed, adds 10 − 0.0025·Q². */
    @Test
    void unequal_pumps_add_their_heads() {
        SeriesPumps pumps =
                SeriesPumps.of(List.of(Parabolas.steep(), Parabolas.steep().atSpeed(Ratio.of(0.5))));
        assertEquals(62.5, pumps.highestFlow().toCubicMetresPerHour(), 1e-9);
        SeriesPoint point = pumps.meeting(system(0, 0.01), "system");
        assertEquals(Math.sqrt(50 / 0.015), point.flow().toCubicMetresPerHour(), 1e-8);
        assertEquals(40 - 0.0025 * 50 / 0.015, point.points().get(0).head().metres(), 1e-9);
        SeriesPoint reversed = SeriesPumps.of(List.of(Parabolas.steep().atSpeed(Ratio.of(0.5)), Parabolas.steep()))
                .meeting(system(0, 0.01), "system");
        assertEquals(point.flow().si(), reversed.flow().si(), 1e-14);
    }

    /** 40 + 0.2·Q − 0.004·Q² = 41: Q = 25 ± √375. */
    @Test
    void drooping_pumps_on_a_flat_system_settle_where_the_head_falls_and_name_the_other_flow() {
        SeriesPoint point = SeriesPumps.of(List.of(Parabolas.drooping(), Parabolas.drooping()))
                .meeting(q -> 41, "system");
        assertEquals(25 + Math.sqrt(375), point.flow().toCubicMetresPerHour(), 1e-8);
        assertEquals(25 - Math.sqrt(375), point.others().get(0).toCubicMetresPerHour(), 1e-8);
        assertTrue(point.notes().has(PumpProblem.SEVERAL_SOLUTIONS));
    }

    @Test
    void what_lies_beyond_the_curves_is_refused() {
        refused(
                PumpProblem.BEYOND_PUMP_CURVES,
                () -> SeriesPumps.of(List.of(Parabolas.steep())).meeting(system(0, 1e-5), "system"));
        refused(
                PumpProblem.NO_SHARED_POINT,
                () -> SeriesPumps.of(List.of(Parabolas.steep())).meeting(system(41, 1e-5), "system"));
        refused(PumpProblem.NO_PUMPS, () -> SeriesPumps.of(List.of()));
        refused(
                PumpProblem.NO_SHARED_FLOW,
                () -> SeriesPumps.of(List.of(KnownPump.curve(), Parabolas.curve("P-S", 4, 10, 0, -0.1))));
    }

    @Test
    void covers_the_flows_that_all_curves_cover() {
        SeriesPumps pumps = SeriesPumps.of(List.of(KnownPump.curve(), Parabolas.curve("P-S", 90, 10, 0, -0.001)));
        assertEquals(m3ph(5).si(), pumps.lowestFlow().si(), 1e-15);
        assertEquals(m3ph(90).si(), pumps.highestFlow().si(), 1e-15);
    }

    @Test
    void a_point_in_series_adds_the_powers_and_says_what_it_is() {
        SeriesPumps pumps = SeriesPumps.of(List.of(Parabolas.steep(), Parabolas.steep()));
        assertEquals(2, pumps.curves().size());
        SeriesPoint point = pumps.meeting(system(10, 0.0015), "system");
        assertEquals(
                2 * (20_000 + 100 * Math.sqrt(70 / 0.0065)), point.shaftPower().watts(), 1e-5);
        assertEquals("103.8 m³/h at 26.15 m, 2 pumps in series", point.toString());
    }

    /** 40 − 0.0025·125² = 0.9375 m at the end; the system takes 0.00001·125² = 0.1563 m there. */
    @Test
    void a_refusal_says_what_pumps_and_system_do_at_the_end_of_the_curves() {
        SeriesPumps one = SeriesPumps.of(List.of(Parabolas.steep()));
        String beyond = assertThrows(Refusal.class, () -> one.meeting(system(0, 1e-5), "system"))
                .getMessage();
        assertTrue(beyond.startsWith("Asked where P-A in series meet the system. At 125 m³/h,"), beyond);
        assertTrue(beyond.contains("they give 0.9375 m and the system takes 0.1563 m. Throttle"), beyond);
        String above = assertThrows(Refusal.class, () -> one.meeting(system(41, 1e-5), "system"))
                .getMessage();
        assertTrue(above.contains("At 0 m³/h,") && above.contains("they give 40 m and the system takes 41 m"), above);
        assertTrue(above.contains("Choose higher speeds"), above);
    }

    @Test
    void curves_that_share_a_single_flow_have_none_to_settle_at() {
        refused(
                PumpProblem.NO_SHARED_FLOW,
                () -> SeriesPumps.of(List.of(KnownPump.curve(), Parabolas.curve("P-S", 5, 10, 0, -0.1))));
    }
}

package headrace.commission;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.Duty;
import headrace.drive.LossModel;
import headrace.estimate.FlowEstimator;
import headrace.estimate.Sets;
import headrace.estimate.ThroughLosses;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.units.Head;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CommissioningTest {
    /** At full speed the pump gives 31.2 − 0.72 − 5.04 = 25.44 m at 60 m³/h. */
    private static final Duty DUTY = new Duty(Sets.m3ph(60), Head.metres(25.44));

    private final FlowEstimator estimator = Sets.estimator(Sets.usual());
    private final CommissioningSheet sheet = CommissioningSheet.of(estimator, DUTY, 5);

    /** Readings with heads and powers changed. */
    private List<SiteReading> readings(DoubleUnaryOperator head, DoubleUnaryOperator power) {
        return sheet.rows().stream()
                .map(row -> new SiteReading(
                        row.speed(),
                        Optional.of(Head.metres(
                                head.applyAsDouble(row.shutOffHead().value().metres()))),
                        Optional.of(Power.watts(
                                power.applyAsDouble(row.closedPower().value().watts()))),
                        Optional.of(Head.metres(
                                head.applyAsDouble(row.dutyHead().value().metres()))),
                        Optional.of(Power.watts(
                                power.applyAsDouble(row.dutyPower().value().watts())))))
                .toList();
    }

    private static DoubleUnaryOperator times(double factor) {
        return value -> factor * value;
    }

    @Test
    void a_sheet_goes_by_the_affinity_laws_from_its_duty() {
        assertEquals(5, sheet.rows().size());
        assertEquals(1, sheet.dutySpeed().over(Sets.SPEED).value(), 1e-9);
        for (CommissioningSheet.Row row : sheet.rows()) {
            double s = row.speed().over(Sets.SPEED).value();
            assertEquals(31.2 * s * s, row.shutOffHead().value().metres(), 1e-9);
            assertEquals(60 * s, row.dutyFlow().toCubicMetresPerHour(), 1e-7);
            assertEquals(25.44 * s * s, row.dutyHead().value().metres(), 1e-7);
        }
    }

    /** At full speed: 1 % reading, 0.2 % of speed doubled by the square law, 1 % of the map as a rectangle. */
    @Test
    void tolerances_hold_the_errors_of_readings_and_map() {
        CommissioningSheet.Row last = sheet.rows().get(4);
        double share = Math.sqrt(1e-4 + 0.004 * 0.004 + 1e-4 / 3);
        assertEquals(2 * 31.2 * share, last.shutOffHead().expanded().metres(), 1e-6);
    }

    @Test
    void readings_as_expected_are_said_to_be() {
        SiteVerdict verdict = sheet.judge(readings(times(1.003), times(0.995)));
        assertEquals(Cause.AS_EXPECTED, verdict.likeliest());
        assertTrue(verdict.lines().stream().allMatch(SiteVerdict.Line::inside));
    }

    @Test
    void a_pump_that_turns_backwards_is_told_by_its_shut_off_head() {
        assertEquals(
                Cause.TURNS_BACKWARDS,
                sheet.judge(readings(times(0.6), times(1.15))).likeliest());
    }

    @Test
    void a_closed_valve_is_told_by_a_power_that_stays() {
        List<SiteReading> closed = sheet.rows().stream()
                .map(row -> new SiteReading(
                        row.speed(),
                        Optional.of(row.shutOffHead().value()),
                        Optional.of(row.closedPower().value()),
                        Optional.of(row.shutOffHead().value()),
                        Optional.of(row.closedPower().value())))
                .toList();
        SiteVerdict verdict = sheet.judge(closed);
        assertEquals(Cause.VALVE_CLOSED, verdict.likeliest());
        assertTrue(verdict.explained());
    }

    @Test
    void another_impeller_has_its_square_in_the_head_and_its_cube_in_the_power() {
        double l = 0.93;
        SiteVerdict verdict = sheet.judge(readings(times(l * l), value -> {
            return value * l * l * l;
        }));
        assertEquals(Cause.OTHER_IMPELLER, verdict.likeliest());
        assertEquals(0.93, verdict.causes().get(0).size(), 0.01);
    }

    @Test
    void a_wrong_scale_of_the_meter_leaves_the_heads_alone() {
        SiteVerdict verdict = sheet.judge(readings(times(1), times(1.2)));
        assertEquals(Cause.METER_SCALE, verdict.likeliest());
        assertEquals(1.2, verdict.causes().get(0).size(), 0.03);
    }

    @Test
    void worn_rings_take_head_and_hardly_any_power() {
        SiteVerdict verdict = sheet.judge(readings(times(0.9), times(0.99)));
        assertEquals(Cause.WORN_RING, verdict.likeliest());
    }

    @Test
    void a_gauge_height_is_the_same_number_of_metres_at_every_speed() {
        SiteVerdict verdict = sheet.judge(readings(value -> value + 1.2, times(1)));
        assertEquals(Cause.GAUGE_OFFSET, verdict.likeliest());
        assertEquals(1.2, verdict.causes().get(0).size(), 0.1);
    }

    @Test
    void one_speed_leaves_more_than_one_cause_and_says_so() {
        List<SiteReading> all = readings(times(0.93), times(1));
        SiteReading one = all.get(4);
        SiteReading head =
                new SiteReading(one.speed(), one.shutOffHead(), Optional.empty(), Optional.empty(), Optional.empty());
        SiteVerdict verdict = sheet.judge(List.of(head));
        assertTrue(verdict.notes().has(CommissionProblem.CAUSE_UNDECIDED));
    }

    @Test
    void a_cause_that_cannot_show_in_what_was_read_has_no_share() {
        CommissioningSheet.Row row = sheet.rows().get(4);
        SiteReading head = new SiteReading(
                row.speed(),
                Optional.of(row.shutOffHead().value()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        SiteVerdict verdict = sheet.judge(List.of(head));
        assertEquals(Cause.AS_EXPECTED, verdict.likeliest());
        List<Cause> causes =
                verdict.causes().stream().map(SiteVerdict.Likely::cause).toList();
        assertFalse(causes.contains(Cause.VALVE_CLOSED) || causes.contains(Cause.METER_SCALE), causes::toString);
    }

    @Test
    void readings_that_no_cause_explains_are_not_explained() {
        SiteVerdict verdict = sheet.judge(readings(times(1.6), times(0.4)));
        assertFalse(verdict.explained());
        assertTrue(verdict.notes().has(CommissionProblem.UNEXPLAINED_READINGS));
    }

    @Test
    void the_shares_of_the_causes_add_up_to_the_whole() {
        double sum = sheet.judge(readings(times(0.95), times(1))).causes().stream()
                .mapToDouble(each -> each.share().value())
                .sum();
        assertEquals(1, sum, 1e-12);
    }

    @Test
    void a_curve_that_does_not_reach_no_flow_has_no_sheet_and_neither_has_a_duty_out_of_reach() {
        FlowEstimator tested =
                FlowEstimator.of(ThroughLosses.of(KnownPump.set(LossModel.named("separate"))), Sets.usual());
        assertEquals(
                CommissionProblem.SHUT_OFF_NOT_TESTED,
                assertThrows(Refusal.class, () -> CommissioningSheet.of(tested, KnownPump.DESIGN, 5))
                        .problem());
        Duty high = new Duty(Sets.m3ph(60), Head.metres(40));
        assertEquals(
                CommissionProblem.IMPOSSIBLE_SHEET,
                assertThrows(Refusal.class, () -> CommissioningSheet.of(estimator, high, 5))
                        .problem());
        List<SiteReading> none = new ArrayList<>();
        assertEquals(
                CommissionProblem.NOTHING_ENTERED,
                assertThrows(Refusal.class, () -> sheet.judge(none)).problem());
    }
}

package headrace.trend;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.trend.Change.Kind;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CleaningTest {
    private static final CleaningRules RULES = CleaningRules.of(InventedLog.set());

    /** Rows a minute apart with power, speed and flow, each row on the line of its number plus 2. */
    private static TrendLog log(long[] minutes, double[] watts, double[] flow) {
        int n = minutes.length;
        Map<Channel, double[]> values = new EnumMap<>(Channel.class);
        values.put(Channel.POWER, watts);
        values.put(
                Channel.SPEED,
                IntStream.range(0, n).mapToDouble(i -> 100 + i % 5).toArray());
        values.put(Channel.FLOW, flow);
        TrendLog.Rows rows = new TrendLog.Rows(
                Arrays.stream(minutes).map(minute -> 60 * minute).toArray(),
                IntStream.range(2, n + 2).toArray(),
                values,
                n,
                ZoneOffset.UTC);
        return TrendLog.read("log.csv", rows, List.of(), Basis.NONE);
    }

    private static double[] moving(int n) {
        return IntStream.range(0, n).mapToDouble(i -> 0.005 + 0.0001 * (i % 7)).toArray();
    }

    private static double[] watts(int n) {
        return IntStream.range(0, n).mapToDouble(i -> 2000 + i % 11).toArray();
    }

    private static long[] minutes(int n) {
        return IntStream.range(0, n).asLongStream().toArray();
    }

    @Test
    void a_sound_log_is_left_as_it_is() {
        TrendLog clean = log(minutes(100), watts(100), moving(100)).cleaned(RULES);
        assertEquals(100, clean.count());
        assertEquals(List.of(), clean.changes());
        assertTrue(clean.notes().isEmpty());
        assertEquals(60, clean.interval().seconds());
    }

    @Test
    void rows_in_any_order_give_the_same_log_as_rows_in_order() {
        int n = 200;
        Random random = new Random(4);
        long[] minutes = minutes(n);
        double[] watts = watts(n);
        double[] flow = moving(n);
        for (int i = n - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            long minute = minutes[i];
            minutes[i] = minutes[j];
            minutes[j] = minute;
            double power = watts[i];
            watts[i] = watts[j];
            watts[j] = power;
            double each = flow[i];
            flow[i] = flow[j];
            flow[j] = each;
        }
        TrendLog clean = log(minutes, watts, flow).cleaned(RULES);
        assertArrayEquals(watts(n), clean.values(Channel.POWER));
        assertArrayEquals(moving(n), clean.values(Channel.FLOW));
        assertTrue(clean.rows(Kind.PUT_IN_ORDER) > 50);
        assertEquals(0, clean.times(Kind.GAP));
    }

    @Test
    void a_time_that_stands_twice_is_kept_once_and_other_readings_are_told() {
        long[] minutes = minutes(100);
        minutes[50] = 49;
        TrendLog clean = log(minutes, watts(100), moving(100)).cleaned(RULES);
        assertEquals(99, clean.count());
        Change change = clean.changes().get(0);
        assertEquals("log.csv:52: time stood twice, first row kept (with other readings)", change.toString());
        assertEquals(1, clean.rows(Kind.GAP), "the minute that was overwritten is missing");
    }

    @Test
    void a_gap_says_how_many_rows_are_missing_and_nothing_is_put_in() {
        long[] minutes = minutes(100);
        for (int i = 60; i < 100; i++) {
            minutes[i] += 25;
        }
        TrendLog clean = log(minutes, watts(100), moving(100)).cleaned(RULES);
        assertEquals(100, clean.count());
        assertEquals(1, clean.times(Kind.GAP));
        assertEquals(25, clean.rows(Kind.GAP));
        assertEquals(
                "1970-01-01 00:59 to 1970-01-01 01:25", clean.changes().get(0).about());
    }

    @Test
    void rows_that_lack_a_reading_or_hold_one_that_cannot_be_are_left_out() {
        double[] watts = watts(100);
        double[] flow = moving(100);
        watts[10] = -1000;
        watts[20] = Double.NaN;
        flow[30] = 5;
        flow[40] = -1e-6;
        TrendLog clean = log(minutes(100), watts, flow).cleaned(RULES);
        assertEquals(97, clean.count());
        assertEquals(
                List.of(
                        "log.csv:22: empty cell, row left out (power)",
                        "log.csv:12: value that cannot be, row left out (power -1 kW)",
                        "log.csv:32: value that cannot be, row left out (flow 18000 m³/h)"),
                clean.changes().stream().map(Change::toString).toList());
        for (Channel channel : clean.channels()) {
            assertFalse(Arrays.stream(clean.values(channel)).anyMatch(Double::isNaN));
        }
    }

    @Test
    void a_reading_that_stands_still_while_others_move_is_stuck_from_twenty_rows_on() {
        double[] flow = moving(100);
        Arrays.fill(flow, 20, 39, 0.0061);
        Arrays.fill(flow, 60, 80, 0.0062);
        TrendLog clean = log(minutes(100), watts(100), flow).cleaned(RULES);
        assertEquals(80, clean.count());
        assertEquals(1, clean.times(Kind.STUCK_READING));
        Change change = clean.changes().get(0);
        assertEquals(62, change.from().line());
        assertEquals(81, change.lastLine());
        assertEquals(
                61,
                log(minutes(100), watts(100), flow)
                        .cleaned(RULES.withStuck(19, Set.of(Channel.FLOW)))
                        .count());
    }

    @Test
    void a_pump_at_rest_is_not_a_stuck_sensor() {
        double[] flow = moving(100);
        Arrays.fill(flow, 20, 70, 0);
        assertEquals(100, log(minutes(100), watts(100), flow).cleaned(RULES).count());
    }

    @Test
    void nothing_else_than_a_clean_log_is_calculated_with() {
        TrendLog log = log(minutes(100), watts(100), moving(100));
        Refusal refusal = assertThrows(Refusal.class, () -> LoggedLoad.of(log, InventedLog.DESIGN));
        assertEquals(TrendProblem.LOG_NOT_CLEANED, refusal.problem());
        assertThrows(Refusal.class, () -> log.between(Instant.EPOCH, Instant.now()));
    }

    @Test
    void a_log_of_which_nothing_is_left_is_refused_and_one_that_lost_much_says_so() {
        double[] watts = watts(100);
        Arrays.fill(watts, 0, 30, Double.NaN);
        TrendLog clean = log(minutes(100), watts, moving(100)).cleaned(RULES);
        assertTrue(clean.notes().has(TrendProblem.MUCH_LEFT_OUT));
        Arrays.fill(watts, Double.NaN);
        Refusal refusal = assertThrows(
                Refusal.class, () -> log(minutes(100), watts, moving(100)).cleaned(RULES));
        assertEquals(TrendProblem.TOO_SHORT_LOG, refusal.problem());
        assertEquals(
                TrendProblem.IMPOSSIBLE_CLEANING,
                assertThrows(Refusal.class, () -> RULES.withStuck(2, Set.of())).problem());
    }

    @Test
    void a_part_of_a_log_holds_its_rows_and_no_others() {
        TrendLog clean = log(minutes(100), watts(100), moving(100)).cleaned(RULES);
        TrendLog part = clean.between(Instant.ofEpochSecond(600), Instant.ofEpochSecond(1200));
        assertEquals(10, part.count());
        assertEquals(2010, part.values(Channel.POWER)[0]);
        assertEquals(Instant.ofEpochSecond(600), part.start());
        assertThrows(
                Refusal.class, () -> clean.between(Instant.ofEpochSecond(9_000_000), Instant.ofEpochSecond(9_100_000)));
    }

    /** Every row is either kept or in the list, whatever is wrong with it. */
    @Test
    void no_row_is_lost_without_a_word() {
        for (int seed = 0; seed < 30; seed++) {
            Random random = new Random(seed);
            int n = 400;
            long[] minutes = minutes(n);
            double[] watts = watts(n);
            double[] flow = moving(n);
            for (int k = 0; k < 12; k++) {
                watts[random.nextInt(n)] = random.nextBoolean() ? Double.NaN : -5000;
                flow[random.nextInt(n)] = random.nextBoolean() ? Double.NaN : 1;
                minutes[random.nextInt(n)] = random.nextInt(n);
            }
            int at = random.nextInt(n - 50);
            Arrays.fill(flow, at, at + 30, 0.0077);
            TrendLog clean = log(minutes, watts, flow).cleaned(RULES);
            int out = clean.rows(Kind.REPEATED_TIME)
                    + clean.rows(Kind.EMPTY_CELL)
                    + clean.rows(Kind.IMPOSSIBLE_VALUE)
                    + clean.rows(Kind.STUCK_READING);
            assertEquals(n, clean.count() + out, "seed " + seed);
        }
    }
}

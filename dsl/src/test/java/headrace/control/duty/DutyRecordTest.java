package headrace.control.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.duty.DutyEvent.Kind;
import headrace.control.duty.DutyPlan.Changeover;
import headrace.control.duty.DutyPlan.Counted;
import headrace.numeric.RandomStreams;
import headrace.problem.Refusal;
import headrace.units.Time;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class DutyRecordTest {
    private static final Time WEEK = Time.days(7);

    /**
     * A week by hand. Pump 1 runs day 1, day 3 until 10 o'clock, day 5 and day 7, and each time 20 s into the next
     * turn: 86420 + 36000 + 86420 + 86400 = 295 240 s. Pump 2 runs day 2, from 30 s after the fault through the turn of
     * day 4 that is left out until 20 s into day 5, and day 6: 86420 + 136 790 + 86420 = 309 630 s. Together 604 870 s,
     * which is the week less a gap of 30 s and more by five overlaps of 20 s.
     */
    @Test
    void a_week_with_a_fault_is_booked_as_by_hand() {
        DutyPlan plan = DutyPlan.pair(Time.days(1)).with(new Changeover(Time.seconds(20), Time.seconds(30), false));
        Span repair = Span.between(Time.hours(2 * 24 + 10), Time.hours(3 * 24 + 16));
        DutyRecord week = DutyRecord.of(plan, WEEK, List.of(new Fault(0, repair)));
        assertRan(week, 295_240, 309_630);
        assertEquals(List.of(4L, 3L), week.starts());
        assertEquals(30, week.gap().seconds());
        assertEquals(100, week.overlap().seconds());
        assertEquals(0, week.nobody().seconds());
        assertEquals(5, week.alternations());
        assertEquals(1, week.leftOut());
        assertEquals(14_390, week.spread().seconds());
        assertTrue(week.notes().has(DutyProblem.GAP_AFTER_FAULT));
        assertTrue(week.notes().has(DutyProblem.ALTERNATION_LEFT_OUT));
        assertFalse(week.notes().has(DutyProblem.NO_PUMP_LEFT));
        assertEquals(
                "day 3 10:00:30: pump 2 starts",
                week.events().stream()
                        .filter(event -> event.kind() == Kind.START && event.second() > 172_800)
                        .findFirst()
                        .orElseThrow()
                        .toString());
    }

    /**
     * Ten hours a day, turns of 24 run hours: pump 1 runs 10 + 10 + 4 h, pump 2 6 + 10 + 8 h, pump 1 again 2 + 10 + 10
     * h.
     */
    @Test
    void turns_by_run_hours_count_only_hours_that_are_run() {
        DutyPlan plan = DutyPlan.pair(Time.hours(24)).byRunHours();
        DutyRecord week = DutyRecord.of(plan, WEEK, Span.daily(8, 18, 7), List.of());
        assertRan(week, 46 * 3600, 24 * 3600);
        assertEquals(70, week.wanted().toHours(), 1e-12);
        assertEquals(2, week.alternations());
    }

    /** Turns by the clock at midnight while the pumps rest: days 1, 3, 5, 7 and days 2, 4, 6 of ten hours. */
    @Test
    void turns_by_the_clock_go_on_while_the_pumps_rest() {
        DutyRecord week = DutyRecord.of(DutyPlan.pair(Time.days(1)), WEEK, Span.daily(8, 18, 7), List.of());
        assertRan(week, 40 * 3600, 30 * 3600);
        assertEquals(List.of(4L, 3L), week.starts());
        assertEquals(6, week.alternations());
    }

    /** Pump 1 until 1000, pump 2 from 1010 to 2000, nobody to 3000, pump 2 at once when it is fit again. */
    @Test
    void with_both_pumps_at_fault_the_first_that_is_fit_again_starts_at_once() {
        DutyPlan plan = DutyPlan.pair(Time.hours(10)).with(new Changeover(Time.ZERO, Time.seconds(10), false));
        List<Fault> faults = List.of(new Fault(0, new Span(1000, 5000)), new Fault(1, new Span(2000, 3000)));
        DutyRecord record = DutyRecord.of(plan, Time.seconds(6000), faults);
        assertRan(record, 1000, 990 + 3000);
        assertEquals(10, record.gap().seconds());
        assertEquals(1000, record.nobody().seconds());
        assertTrue(record.notes().has(DutyProblem.NO_PUMP_LEFT));
    }

    /** The fault at 600 passes the duty on; the clock turns at 1000, or 1000 s after the start at 605. */
    @Test
    void the_clock_goes_on_through_a_fault_or_begins_anew() {
        List<Fault> faults = List.of(new Fault(0, new Span(600, 700)));
        Changeover goesOn = new Changeover(Time.ZERO, Time.seconds(5), false);
        Changeover anew = new Changeover(Time.ZERO, Time.seconds(5), true);
        DutyPlan plan = DutyPlan.pair(Time.seconds(1000));
        assertRan(DutyRecord.of(plan.with(goesOn), Time.seconds(1900), faults), 600 + 900, 395);
        assertRan(DutyRecord.of(plan.with(anew), Time.seconds(1900), faults), 600 + 295, 1000);
    }

    /**
     * At 1000 pump 2 starts and fails at 1010, while pump 1 still runs for another 20 s: it keeps the duty without a
     * gap.
     */
    @Test
    void a_pump_that_fails_in_the_overlap_leaves_the_duty_where_it_was() {
        DutyPlan plan =
                DutyPlan.pair(Time.seconds(1000)).with(new Changeover(Time.seconds(30), Time.seconds(5), false));
        DutyRecord record = DutyRecord.of(plan, Time.seconds(1500), List.of(new Fault(1, new Span(1010, 1400))));
        assertRan(record, 1500, 10);
        assertEquals(0, record.gap().seconds());
        DutyRecord other = DutyRecord.of(plan, Time.seconds(1500), List.of(new Fault(0, new Span(1010, 1400))));
        assertRan(other, 1010, 500);
        assertEquals(10, other.overlap().seconds());
    }

    /** The standby pump fails in the 30 s before it would start; the third one starts 30 s after that. */
    @Test
    void a_standby_pump_that_fails_before_it_starts_is_passed_over() {
        DutyPlan plan =
                new DutyPlan(3, Time.days(1), Counted.CLOCK, new Changeover(Time.ZERO, Time.seconds(30), false));
        List<Fault> faults = List.of(new Fault(0, new Span(100, 900)), new Fault(1, new Span(110, 900)));
        DutyRecord record = DutyRecord.of(plan, Time.seconds(1000), faults);
        assertRan(record, 100, 0, 860);
        assertEquals(40, record.gap().seconds());
    }

    /** 525 600 turns of a minute, half of them each; with faults the books still close and no second is lost. */
    @Test
    void a_year_of_turns_of_a_minute_is_booked_to_the_second() {
        Time year = Time.days(365);
        DutyRecord plain = DutyRecord.of(DutyPlan.pair(Time.minutes(1)), year, List.of());
        assertRan(plain, 15_768_000, 15_768_000);
        assertEquals(525_599, plain.alternations());
        DutyPlan plan = DutyPlan.pair(Time.minutes(1)).with(new Changeover(Time.seconds(7), Time.seconds(11), false));
        List<Fault> faults = Fault.drawn(4, 2, year, Time.days(20), Time.hours(30));
        DutyRecord faulty = DutyRecord.of(plan, year, faults);
        assertEquals(0, faulty.unaccounted().seconds());
        assertTrue(faulty.nobody().seconds() > 0 && faulty.leftOut() > 0);
    }

    /** Whatever the plan: what the events say is what the books say, no pump runs at fault, and none rests in vain. */
    @Test
    void events_and_books_agree_for_plans_at_random() {
        RandomStreams random = RandomStreams.of(9);
        for (int i = 0; i < 300; i++) {
            int pumps = 2 + (int) (3 * random.uniform(0, i));
            long delay = (long) (40 * random.uniform(1, i));
            long interval = 100 + (long) (2000 * random.uniform(2, i));
            Counted counted = random.uniform(3, i) < 0.5 ? Counted.CLOCK : Counted.RUN_HOURS;
            Time overlap = Time.seconds((long) (90 * random.uniform(4, i)));
            DutyPlan plan = new DutyPlan(
                    pumps,
                    Time.seconds(interval),
                    counted,
                    new Changeover(overlap, Time.seconds(delay), random.uniform(5, i) < 0.5));
            Time length = Time.seconds(30_000);
            List<Fault> faults = Fault.drawn(i, pumps, length, Time.seconds(4000), Time.seconds(1500));
            List<Span> wanted = List.of(new Span(50, 9000), new Span(9100, 20_000), new Span(21_000, 30_000));
            DutyRecord record = DutyRecord.of(plan, length, wanted, faults);
            assertEquals(0, record.unaccounted().seconds(), plan.toString());
            assertReplay(record, delay);
        }
    }

    private static void assertReplay(DutyRecord record, long delay) {
        int pumps = record.plan().pumps();
        long[] ran = new long[pumps];
        long[] since = new long[pumps];
        boolean[] runs = new boolean[pumps];
        boolean[] faulty = new boolean[pumps];
        boolean wanted = false;
        long idle = 0;
        long last = 0;
        for (DutyEvent event : record.events()) {
            boolean fit = false;
            boolean any = false;
            for (int pump = 0; pump < pumps; pump++) {
                fit |= !faulty[pump];
                any |= runs[pump];
                assertFalse(
                        runs[pump] && faulty[pump] && event.second() > last,
                        record.plan().toString());
            }
            idle = wanted && fit && !any ? idle + event.second() - last : 0;
            assertTrue(idle <= delay * pumps, record.plan() + " at " + event);
            last = event.second();
            int pump = event.pump();
            switch (event.kind()) {
                case START -> {
                    runs[pump] = true;
                    since[pump] = last;
                }
                case STOP -> {
                    runs[pump] = false;
                    ran[pump] += last - since[pump];
                }
                case FAULT -> faulty[pump] = true;
                case REPAIRED -> faulty[pump] = false;
                case WANTED -> wanted = true;
                case NOT_WANTED -> wanted = false;
                default -> assertTrue(pump < pumps);
            }
        }
        for (int pump = 0; pump < pumps; pump++) {
            ran[pump] += runs[pump] ? 30_000 - since[pump] : 0;
            assertEquals(
                    ran[pump], record.ran().get(pump).seconds(), record.plan().toString());
        }
    }

    @Test
    void plans_and_spans_that_cannot_be_are_refused() {
        assertThrows(Refusal.class, () -> DutyPlan.pair(Time.seconds(59)));
        assertThrows(Refusal.class, () -> DutyPlan.pair(Time.days(8)));
        assertThrows(Refusal.class, () -> DutyPlan.pair(Time.seconds(90.5)));
        assertThrows(
                Refusal.class,
                () -> DutyPlan.pair(Time.minutes(1)).with(new Changeover(Time.minutes(1), Time.ZERO, false)));
        assertThrows(
                Refusal.class,
                () -> new DutyPlan(1, Time.days(1), Counted.CLOCK, new Changeover(Time.ZERO, Time.ZERO, false)));
        assertThrows(Refusal.class, () -> new Span(10, 10));
        DutyPlan plan = DutyPlan.pair(Time.days(1));
        List<Span> crossed = List.of(new Span(0, 100), new Span(50, 200));
        assertThrows(Refusal.class, () -> DutyRecord.of(plan, WEEK, crossed, List.of()));
        assertThrows(Refusal.class, () -> DutyRecord.of(plan, WEEK, List.of(new Fault(2, new Span(0, 100)))));
        assertThrows(Refusal.class, () -> Fault.drawn(1, 2, WEEK, Time.ZERO, Time.hours(1)));
    }

    private static void assertRan(DutyRecord record, long... seconds) {
        for (int pump = 0; pump < seconds.length; pump++) {
            assertEquals(seconds[pump], record.ran().get(pump).seconds(), "pump " + (pump + 1));
        }
        assertEquals(0, record.unaccounted().seconds());
    }
}

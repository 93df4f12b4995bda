package headrace.kernel.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TimeLeftTest {
    private static final long SECOND = 1_000_000_000L;

    private final TimeLeft left = new TimeLeft(5 * SECOND, 0);

    private static Optional<Duration> seconds(double seconds) {
        return Optional.of(Duration.ofMillis(Math.round(seconds * 1000)));
    }

    @Test
    void a_steady_calculation_runs_down_with_the_clock() {
        assertEquals(seconds(8), left.at(7 * SECOND, 0.2), "2 s for a fifth: 10 s in all");
        assertEquals(seconds(6), left.at(9 * SECOND, 0.4));
        assertEquals(seconds(1), left.at(14 * SECOND, 0.9));
        assertEquals(seconds(0), left.at(15 * SECOND, 1));
    }

    @Test
    void nothing_is_said_before_a_second_and_a_fiftieth_of_the_calculation() {
        assertEquals(Optional.empty(), left.at(5 * SECOND + SECOND / 2, 0.5));
        assertEquals(Optional.empty(), left.at(25 * SECOND, 0.01));
        assertEquals(seconds(1), left.at(6 * SECOND, 0.5));
    }

    @Test
    void what_was_done_before_it_was_first_heard_of_counts_for_nothing() {
        TimeLeft late = new TimeLeft(0, 0.5);
        assertEquals(seconds(6), late.at(4 * SECOND, 0.7), "4 s for 0.2, so 6 s for the 0.3 that are left");
    }

    @Test
    void a_step_that_takes_longer_draws_the_time_said_towards_the_new_estimate_and_no_further() {
        assertEquals(seconds(8), left.at(7 * SECOND, 0.2));
        // After 5 s the estimate is 5 s · 0.75/0.25 = 15 s, where 5 s were expected: 3 s are half of the way.
        assertEquals(seconds(10), left.at(10 * SECOND, 0.25));
    }

    @Test
    void a_time_that_was_said_never_runs_below_zero() {
        assertEquals(seconds(1), left.at(6 * SECOND, 0.5));
        // After 10 s the estimate is 10 s · 0.4/0.6 = 6.667 s, and 0 s were expected: 9/12 of it.
        assertEquals(seconds(5), left.at(15 * SECOND, 0.6));
    }
}

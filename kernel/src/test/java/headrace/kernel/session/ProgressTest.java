package headrace.kernel.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ProgressTest {
    private final List<String> heard = new ArrayList<>();
    private long milliseconds;
    private final Progress progress = new Progress(() -> false, new Door(), () -> milliseconds * 1_000_000);

    private void at(long now, String what, double share) {
        milliseconds = now;
        progress.progress(what, share);
    }

    @Test
    void a_quick_calculation_tells_nothing() {
        at(0, "hours", 0);
        at(399, "hours", 0.9);
        at(399, "hours", 1);
        progress.end();
        assertEquals(List.of(), heard);
    }

    @Test
    void many_quick_calculations_tell_nothing_however_long_they_take_together() {
        for (int i = 0; i < 20; i++) {
            at(300 * i, "hours", 0);
            at(300 * i + 290, "hours", 1);
        }
        progress.end();
        assertEquals(List.of(), heard);
    }

    @Test
    void a_slow_one_tells_four_times_a_second_and_then_that_it_is_over() {
        at(0, "hours", 0);
        at(400, "hours", 0.04);
        at(649, "hours", 0.06);
        at(650, "hours", 0.065);
        at(1000, "hours", 0.1);
        progress.end();
        assertEquals(List.of("hours: 4 %", "hours: 6 %", "hours: 10 %, about 9 s left", "ended"), heard);
    }

    @Test
    void an_end_is_told_at_once_so_that_no_old_time_stands_there() {
        at(0, "hours", 0);
        at(5000, "hours", 0.5);
        at(5001, "hours", 1);
        assertEquals(List.of("hours: 50 %, about 5 s left", "hours: 100 %"), heard);
    }

    @Test
    void another_calculation_and_one_that_goes_back_have_a_time_of_their_own() {
        at(0, "hours", 0);
        at(8000, "hours", 0.8);
        at(8100, "pumps", 0.5);
        at(10_100, "pumps", 0.6);
        at(10_200, "pumps", 0);
        at(14_200, "pumps", 0.5);
        assertEquals(
                List.of("hours: 80 %, about 2 s left", "pumps: 60 %, about 8 s left", "pumps: 50 %, about 4 s left"),
                heard);
    }

    @Test
    void what_a_cell_that_was_left_behind_tells_later_is_not_heard() {
        at(0, "hours", 0);
        at(500, "hours", 0.1);
        progress.end();
        at(1000, "hours", 0.2);
        progress.end();
        assertEquals(List.of("hours: 10 %", "ended"), heard);
    }

    /** A door that remembers how far things were. */
    private final class Door implements Output {
        @Override
        public void progress(HowFar far) {
            heard.add(far.text());
        }

        @Override
        public void progressEnded() {
            heard.add("ended");
        }

        @Override
        public void print(String text) {}

        @Override
        public void printError(String text) {}

        @Override
        public void show(MimeBundle bundle, Optional<String> id) {}

        @Override
        public void update(MimeBundle bundle, String id) {}

        @Override
        public void clear(boolean wait) {}

        @Override
        public Optional<String> ask(String prompt, boolean secret) {
            return Optional.empty();
        }
    }
}

package headrace.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StepsTest {
    private final List<String> heard = new ArrayList<>();
    private boolean stop;
    private final Watcher watcher = new Watcher() {
        @Override
        public boolean stopped() {
            return stop;
        }

        @Override
        public void progress(String what, double share) {
            heard.add(what + " " + share);
        }
    };

    private void watched(Runnable body) {
        Work.watched(watcher, body);
    }

    @Test
    void steps_tell_their_share_from_the_first_to_the_end() {
        watched(() -> {
            try (Steps steps = Work.steps("laws", 2)) {
                steps.next();
                steps.next();
            }
        });
        assertEquals(List.of("laws 0.0", "laws 0.5", "laws 1.0"), heard);
    }

    @Test
    void a_calculation_within_a_step_moves_the_share_of_the_outer_one_and_tells_no_words_of_its_own() {
        watched(() -> {
            try (Steps laws = Work.steps("laws", 2)) {
                for (int law = 0; law < 2; law++) {
                    laws.next();
                    try (Steps hours = Work.steps("hours", 2)) {
                        hours.next();
                        hours.next();
                    }
                }
            }
        });
        assertEquals(List.of("laws 0.0", "laws 0.25", "laws 0.5", "laws 0.75", "laws 1.0"), heard);
    }

    @Test
    void the_share_never_goes_back_when_a_step_is_made_of_several_calculations() {
        watched(() -> {
            try (Steps laws = Work.steps("laws", 2)) {
                laws.next();
                Work.progress("one", 1, 2);
                Work.progress("another", 1, 4);
                Work.progress("another", 3, 4);
            }
        });
        assertEquals(List.of("laws 0.0", "laws 0.25", "laws 0.375"), heard);
    }

    @Test
    void steps_that_were_not_all_begun_do_not_count_as_done() {
        watched(() -> {
            try (Steps steps = Work.steps("laws", 3)) {
                steps.next();
                steps.next();
            }
        });
        assertEquals(List.of("laws 0.0", "laws 0.3333333333333333"), heard);
    }

    @Test
    void steps_of_nothing_are_done_at_once() {
        watched(() -> {
            try (Steps steps = Work.steps("bytes", 0)) {
                steps.at(0);
            }
        });
        assertEquals(List.of("bytes 1.0"), heard);
    }

    @Test
    void a_step_ends_the_calculation_when_its_user_asked_for_that_and_the_watcher_is_there_again() {
        watched(() -> {
            stop = true;
            assertThrows(Stopped.class, () -> {
                try (Steps outer = Work.steps("laws", 1);
                        Steps inner = Work.steps("hours", 1)) {
                    inner.next();
                    outer.next();
                }
            });
            assertSame(watcher, Work.watcher());
        });
        assertEquals(List.of(), heard);
    }

    @Test
    void who_catches_a_failure_within_a_step_goes_on_with_the_steps_outside() {
        watched(() -> {
            try (Steps pumps = Work.steps("pumps", 2)) {
                pumps.next();
                try (Steps hours = Work.steps("hours", 4)) {
                    hours.next();
                    hours.next();
                    throw new IllegalStateException();
                } catch (IllegalStateException unfit) {
                    pumps.next();
                }
            }
        });
        assertEquals(List.of("pumps 0.0", "pumps 0.125", "pumps 0.5", "pumps 1.0"), heard);
    }
}

package headrace.kernel.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.cli.Starter.Place;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StarterTest {
    private static final boolean WINDOWS = true;
    private static final boolean CONTAINED = true;

    private static Process java(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectErrorStream(true).start();
    }

    /** Returns a process that goes on: it waits at its input. */
    private static Process waiting() throws IOException {
        return java("-cp", System.getProperty("java.class.path"), Waits.class.getName());
    }

    /** Returns a process that has ended. */
    private static Process ended() throws Exception {
        Process process = java("--no-such-option");
        process.waitFor();
        return process;
    }

    /** Waits for the end of its input. */
    static final class Waits {
        private Waits() {}

        /** Waits. */
        public static void main(String[] arguments) throws IOException {
            while (System.in.read() >= 0) {
                continue;
            }
        }
    }

    private static Optional<ProcessHandle> of(Process process) {
        return Optional.of(process.toHandle());
    }

    private static Map<String, String> named(Process process) {
        return Map.of("JPY_PARENT_PID", Long.toString(process.pid()));
    }

    @Test
    void a_starter_that_lives_is_watched_until_it_ends() throws Exception {
        ProcessHandle self = ProcessHandle.current();
        Map<String, String> own = Map.of("JPY_PARENT_PID", Long.toString(self.pid()));
        assertFalse(
                Starter.gone(own, new Place(of(ended()), !WINDOWS, !CONTAINED)).getAsBoolean());
        Process starter = waiting();
        BooleanSupplier gone = Starter.gone(named(starter), new Place(Optional.of(self), !WINDOWS, !CONTAINED));
        assertFalse(gone.getAsBoolean());
        starter.destroyForcibly().waitFor();
        assertTrue(gone.getAsBoolean());
    }

    @Test
    void a_starter_that_ended_before_the_kernel_was_up_is_gone_whoever_adopted_the_kernel() throws Exception {
        Optional<ProcessHandle> living = Optional.of(ProcessHandle.current());
        for (Optional<ProcessHandle> adopter : List.of(living, Optional.<ProcessHandle>empty())) {
            assertTrue(Starter.gone(named(ended()), new Place(adopter, !WINDOWS, !CONTAINED))
                    .getAsBoolean());
        }
    }

    @Test
    void in_a_container_the_number_may_come_from_outside_and_the_parent_counts() throws Exception {
        Place living = new Place(Optional.of(ProcessHandle.current()), !WINDOWS, CONTAINED);
        assertFalse(Starter.gone(named(ended()), living).getAsBoolean());
        Place dead = new Place(of(ended()), !WINDOWS, CONTAINED);
        assertTrue(Starter.gone(named(ended()), dead).getAsBoolean());
    }

    @Test
    void without_a_number_or_with_what_is_none_the_parent_counts() throws Exception {
        Optional<ProcessHandle> living = Optional.of(ProcessHandle.current());
        assertFalse(
                Starter.gone(Map.of(), new Place(living, !WINDOWS, !CONTAINED)).getAsBoolean());
        assertTrue(Starter.gone(Map.of(), new Place(of(ended()), !WINDOWS, !CONTAINED))
                .getAsBoolean());
        assertFalse(Starter.gone(named(ended()), new Place(living, WINDOWS, !CONTAINED))
                .getAsBoolean());
        assertFalse(Starter.gone(Map.of("JPY_PARENT_PID", "handle"), new Place(living, !WINDOWS, !CONTAINED))
                .getAsBoolean());
    }

    @Test
    void a_kernel_that_was_left_alone_on_purpose_goes_on() {
        Place alone = new Place(Optional.empty(), false, false);
        assertEquals(false, Starter.gone(Map.of(), alone).getAsBoolean());
    }
}

package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.kernel.server.FrontEnd.Message;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.work.Stopped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InterruptTest {
    private static Served served;
    private static FrontEnd frontEnd;

    @BeforeAll
    static void serve() {
        served = Served.groovy();
        frontEnd = served.frontEnd();
    }

    @AfterAll
    static void end() {
        served.close();
    }

    private static String begin(String code) {
        String id = frontEnd.ask("execute_request", Map.of("code", "println 'begun'\n" + code));
        frontEnd.awaitEvent(event -> event.answers(id) && event.type().equals("stream"));
        return id;
    }

    private static void interrupt() {
        Message reply = frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
        assertEquals("interrupt_reply", reply.type());
        assertEquals("ok", reply.text("status"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "while (true) {}",
                "sleep 600_000",
                "Thread.sleep(600_000)",
                "new Object().with { o -> synchronized (o) { o.wait() } }",
                "def f(x) { x.collect { it + 1 } }; while (true) f([1, 2])",
                "while (true) { try { while (true) {} } catch (Throwable t) {} }"
            })
    void a_cell_stops_whatever_it_does_and_the_next_one_runs(String code) {
        String id = begin(code);
        interrupt();
        assertEquals("error", frontEnd.reply(id).text("status"));
        frontEnd.eventsOf(id);
        assertEquals("ok", frontEnd.run("1 + 1").reply().text("status"));
    }

    @Test
    void an_idle_kernel_does_not_mind_being_interrupted() {
        interrupt();
        interrupt();
        assertEquals("ok", frontEnd.run("1 + 1").reply().text("status"));
    }

    @Test
    void the_cells_that_wait_do_not_run_even_if_a_failure_would_not_stop_them() {
        List<String> waiting = new ArrayList<>();
        String first = frontEnd.ask(
                "execute_request", Map.of("code", "println 'begun'; while (true) {}", "stop_on_error", false));
        frontEnd.awaitEvent(event -> event.answers(first) && event.type().equals("stream"));
        for (int i = 0; i < 3; i++) {
            waiting.add(frontEnd.ask("execute_request", Map.of("code", "ran = true", "stop_on_error", false)));
        }
        // answered behind them, so that they have arrived when the interruption comes
        frontEnd.reply(frontEnd.ask("kernel_info_request", Map.of()));
        interrupt();
        assertEquals("error", frontEnd.reply(first).text("status"));
        for (String id : waiting) {
            assertEquals("aborted", frontEnd.reply(id).text("status"));
        }
        Message after = frontEnd.run("binding.hasVariable('ran')").event("execute_result");
        assertEquals(
                "false",
                after.content().getAsJsonObject("data").get("text/plain").getAsString());
    }

    @Test
    void a_cell_that_was_about_to_start_and_did_not_hear_the_first_interruption_hears_another() {
        CountDownLatch asked = new CountDownLatch(1);
        try (Served slow = Served.session(() -> new SlowToStart(asked))) {
            FrontEnd impatient = slow.frontEnd();
            String id = impatient.ask("execute_request", Map.of("code", "wait for ever"));
            impatient.awaitEvent(event -> event.answers(id) && event.type().equals("execute_input"));
            impatient.commandReply(impatient.command("interrupt_request", Map.of()));
            asked.countDown();
            assertEquals("error", impatient.reply(id).text("status"));
        }
    }

    /** Takes its time between being asked for a cell and being able to stop it. */
    private static final class SlowToStart extends ScriptedSession {
        private final CountDownLatch asked;

        SlowToStart(CountDownLatch asked) {
            super((code, output) -> forEver());
            this.asked = asked;
        }

        @Override
        public Outcome run(String code, boolean kept, Output output) {
            try {
                asked.await();
            } catch (InterruptedException e) {
                throw new AssertionError("nobody knows this thread yet", e);
            }
            return super.run(code, kept, output);
        }

        private static Outcome forEver() {
            try {
                new CountDownLatch(1).await();
                return new Outcome.Done();
            } catch (InterruptedException e) {
                throw new Stopped();
            }
        }
    }
}

package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.work.Stopped;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InputTest {
    private static Served served;
    private static FrontEnd frontEnd;

    @BeforeAll
    static void serve() {
        served = Served.session(() -> new ScriptedSession((code, output) -> {
            String[] words = code.split(" ");
            output.print("before ");
            return switch (words[0]) {
                case "ask" -> ScriptedSession.value(output.ask(words[1], false).orElse("nobody"));
                case "elsewhere" ->
                    ScriptedSession.value(CompletableFuture.supplyAsync(() -> askedElsewhere(output, words[1]))
                            .join());
                case "whisper" ->
                    ScriptedSession.value(output.ask(words[1], true).orElse("nobody"));
                default -> new Outcome.Done();
            };
        }));
        frontEnd = served.frontEnd();
    }

    @AfterAll
    static void end() {
        served.close();
    }

    /** Asks on a thread that no interruption of the cell's own thread wakes. */
    private static String askedElsewhere(Output output, String prompt) {
        try {
            return output.ask(prompt, false).orElse("nobody");
        } catch (Stopped stopped) {
            return "freed";
        }
    }

    private static String ask(String code) {
        return frontEnd.ask("execute_request", Map.of("code", code, "allow_stdin", true));
    }

    private static String result(String id) {
        frontEnd.reply(id);
        return new Exchange(null, frontEnd.eventsOf(id))
                .event("execute_result")
                .content()
                .getAsJsonObject("data")
                .get("text/plain")
                .getAsString();
    }

    @Test
    void a_question_goes_to_the_front_end_that_runs_the_cell_and_its_answer_comes_back() {
        try (FrontEnd other = served.another()) {
            String id = other.ask("execute_request", Map.of("code", "ask flow?", "allow_stdin", true));
            Message question = other.question();
            assertEquals("input_request", question.type());
            assertEquals("flow?", question.text("prompt"));
            assertFalse(question.content().get("password").getAsBoolean());
            assertTrue(question.answers(id));
            other.answer(question, "52");
            assertEquals("ok", other.reply(id).text("status"));
        }
    }

    @Test
    void a_secret_is_asked_for_as_one() {
        String id = ask("whisper key");
        Message question = frontEnd.question();
        assertTrue(question.content().get("password").getAsBoolean());
        frontEnd.answer(question, "sesame");
        assertEquals("sesame", result(id));
    }

    @Test
    void what_was_printed_is_seen_before_the_question() {
        String id = ask("ask flow?");
        Message question = frontEnd.question();
        assertTrue(
                frontEnd.awaitEvent(event -> event.answers(id) && event.type().equals("stream"))
                        .text("text")
                        .contains("before"));
        frontEnd.answer(question, "");
        assertEquals("", result(id));
    }

    @Test
    void where_nobody_can_be_asked_nobody_is() {
        String id = frontEnd.ask("execute_request", Map.of("code", "ask flow?", "allow_stdin", false));
        assertEquals("nobody", result(id));
    }

    @Test
    void an_answer_to_an_earlier_question_is_not_taken_for_one_to_the_next() {
        String first = ask("ask one");
        Message question = frontEnd.question();
        frontEnd.answer(question, "1");
        frontEnd.answer(question, "late");
        assertEquals("1", result(first));
        String second = ask("ask two");
        Message next = frontEnd.question();
        frontEnd.answer(next, "2");
        assertEquals("2", result(second));
    }

    @Test
    void an_answer_from_another_front_end_is_not_taken() {
        try (FrontEnd other = served.another()) {
            String id = ask("ask whom");
            Message question = frontEnd.question();
            other.answer(question, "stranger");
            for (int i = 0; i < 20; i++) { // time enough for it to arrive
                other.reply(other.ask("kernel_info_request", Map.of()));
            }
            frontEnd.answer(question, "engineer");
            assertEquals("engineer", result(id));
        }
    }

    @Test
    void an_interruption_frees_a_question_of_another_thread_of_the_cell() {
        String id = ask("elsewhere forever");
        frontEnd.question();
        frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
        assertEquals("freed", result(id));
    }

    @Test
    void an_interruption_frees_a_cell_that_waits_for_an_answer() {
        String id = ask("ask forever");
        Message question = frontEnd.question();
        frontEnd.commandReply(frontEnd.command("interrupt_request", Map.of()));
        assertEquals("error", frontEnd.reply(id).text("status"));
        frontEnd.answer(question, "too late");
        String next = ask("ask again");
        frontEnd.answer(frontEnd.question(), "in time");
        assertEquals("in time", result(next));
    }
}

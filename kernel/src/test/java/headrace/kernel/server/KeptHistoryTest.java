package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.google.gson.JsonArray;
import headrace.kernel.history.History;
import headrace.kernel.history.PastCell;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cells of earlier kernels, asked for over real sockets. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class KeptHistoryTest {
    @TempDir
    Path folder;

    private History history() {
        return History.in(folder, complaint -> {
            throw new AssertionError(complaint);
        });
    }

    private Served serve() {
        return Served.session(() -> new ScriptedSession(KeptHistoryTest::cell), history());
    }

    private static Outcome cell(String code, Output output) {
        return code.startsWith("secret")
                ? ScriptedSession.value(output.ask("key: ", true).orElse("nobody"))
                : ScriptedSession.value("of " + code);
    }

    private static List<String> past(FrontEnd frontEnd, Map<String, ?> choice) {
        List<String> cells = new ArrayList<>();
        frontEnd.exchange("history_request", choice)
                .reply()
                .content()
                .getAsJsonArray("history")
                .forEach(entry -> {
                    JsonArray cell = entry.getAsJsonArray();
                    cells.add(cell.get(0).getAsInt() + "/" + cell.get(1).getAsInt() + " " + cell.get(2));
                });
        return cells;
    }

    @Test
    void a_kernel_gives_the_cells_of_those_before_it_by_tail_range_and_search() {
        for (List<String> session : List.of(List.of("alpha", "beta"), List.of("gamma"))) {
            try (Served served = serve()) {
                session.forEach(served.frontEnd()::run);
            }
        }
        try (Served served = serve()) {
            FrontEnd frontEnd = served.frontEnd();
            frontEnd.run("delta");
            assertEquals(
                    List.of("1/2 \"beta\"", "2/1 \"gamma\"", "3/1 \"delta\""),
                    past(frontEnd, Map.of("hist_access_type", "tail", "n", 3)));
            assertEquals(
                    List.of("1/1 \"alpha\"", "3/1 \"delta\""),
                    past(frontEnd, Map.of("hist_access_type", "search", "pattern", "*l?*a")));
            assertEquals(List.of("2/1 \"gamma\""), past(frontEnd, Map.of("hist_access_type", "range", "session", -1)));
            assertEquals(
                    List.of("1/2 [\"beta\",\"of beta\"]"),
                    past(
                            frontEnd,
                            Map.of("hist_access_type", "range", "session", 1, "start", 2, "stop", 3, "output", true)));
            assertEquals(List.of("3/1 \"delta\""), past(frontEnd, Map.of("hist_access_type", "range", "session", 0)));
            assertEquals(List.of(), past(frontEnd, Map.of("hist_access_type", "range", "session", -9)));
        }
    }

    @Test
    void what_a_cell_asked_for_in_secret_stands_in_no_file() {
        try (Served served = serve()) {
            FrontEnd frontEnd = served.frontEnd();
            String id = frontEnd.ask("execute_request", Map.of("code", "secret", "allow_stdin", true));
            frontEnd.answer(frontEnd.question(), "swordfish");
            frontEnd.reply(id);
        }
        List<PastCell> kept = history().earlier();
        assertEquals(List.of("secret"), kept.stream().map(PastCell::code).toList());
        assertFalse(kept.toString().contains("swordfish"));
    }

    @Test
    void a_cell_that_is_silent_or_not_to_be_stored_is_not_kept() {
        try (Served served = serve()) {
            FrontEnd frontEnd = served.frontEnd();
            frontEnd.exchange("execute_request", Map.of("code", "hidden", "silent", true));
            frontEnd.exchange("execute_request", Map.of("code", "passing", "store_history", false));
            frontEnd.run("stored");
        }
        assertEquals(
                List.of("stored"),
                history().earlier().stream().map(PastCell::code).toList());
    }
}

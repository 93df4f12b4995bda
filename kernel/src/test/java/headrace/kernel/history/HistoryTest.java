package headrace.kernel.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class HistoryTest {
    @TempDir
    Path folder;

    private final List<String> complaints = new ArrayList<>();

    private Path cells() {
        return folder.resolve("state").resolve("history");
    }

    private History history() {
        return History.in(cells(), complaints::add);
    }

    private History withCell(String code) {
        History history = history();
        history.keep(1, code, "");
        return history;
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> all = Files.list(cells())) {
            return all.sorted().toList();
        }
    }

    @Test
    void cells_come_back_in_the_sessions_to_come_with_their_numbers_and_results() {
        try (History first = history()) {
            first.keep(1, "x = 'ä \"quoted\"'\nx", "ä");
            first.keep(2, "y", "");
        }
        try (History second = history()) {
            assertEquals(2, second.session());
            second.keep(1, "z", "3");
        }
        assertEquals(
                List.of(
                        new PastCell(1, 1, "x = 'ä \"quoted\"'\nx", "ä"),
                        new PastCell(1, 2, "y", ""),
                        new PastCell(2, 1, "z", "3")),
                history().earlier());
    }

    @Test
    void a_session_without_a_cell_leaves_nothing_behind() {
        history().close();
        assertFalse(Files.exists(cells()));
        assertEquals(1, history().session());
    }

    @Test
    void a_session_does_not_count_its_own_cells_as_earlier_ones() {
        try (History own = withCell("mine")) {
            assertEquals(List.of(), own.earlier());
        }
    }

    @Test
    void sessions_that_run_at_once_keep_every_cell_whole_and_have_numbers_of_their_own() {
        int sessions = 8;
        int each = 200;
        IntStream.range(0, sessions).parallel().forEach(session -> {
            try (History history = history()) {
                for (int i = 1; i <= each; i++) {
                    history.keep(i, "cell " + i + " of " + session + " " + "x".repeat(500), "");
                }
            }
        });
        List<PastCell> all = history().earlier();
        assertEquals(sessions * each, all.size());
        assertEquals(sessions, all.stream().map(PastCell::session).distinct().count());
        assertEquals(
                sessions * each, all.stream().map(PastCell::code).distinct().count());
        assertEquals(List.of(), complaints);
    }

    @Test
    void no_result_is_kept_once_a_cell_has_asked_for_something_secret() throws IOException {
        try (History history = history()) {
            history.keep(1, "a", "before");
            history.secretAsked();
            history.keep(2, "pass = readSecret('key')", "swordfish");
            history.keep(3, "pass", "swordfish");
        }
        assertEquals(
                List.of("before", "", ""),
                history().earlier().stream().map(PastCell::result).toList());
        assertFalse(Files.readString(files().get(0)).contains("swordfish"));
    }

    @Test
    void a_line_that_was_cut_off_or_is_no_cell_is_passed_over() throws IOException {
        withCell("good").close();
        Files.writeString(files().get(0), "{}\n[1]\n[\"a\",{},[]]\nnoise\n[2,\"cut o", StandardOpenOption.APPEND);
        assertEquals(List.of(new PastCell(1, 1, "good", "")), history().earlier());
    }

    @Test
    void the_oldest_sessions_go_when_there_are_two_hundred() throws IOException {
        for (int i = 1; i <= 205; i++) {
            withCell("session " + i).close();
        }
        List<PastCell> all = history().earlier();
        assertEquals(200, all.size());
        assertEquals("session 6", all.get(0).code());
        assertEquals("session 205", all.get(199).code());
        assertEquals(200, files().size());
    }

    @Test
    void a_session_keeps_no_more_than_two_megabytes_and_a_result_no_more_than_two_thousand_characters() {
        try (History history = history()) {
            history.keep(1, "table", "x".repeat(2_001));
            for (int i = 2; i < 30; i++) {
                history.keep(i, "y".repeat(100_000), "");
            }
        }
        List<PastCell> all = history().earlier();
        assertEquals("", all.get(0).result());
        assertEquals(1 + 20, all.size(), "2,097,152 characters hold twenty cells of 100,000 and one short one");
    }

    @Test
    void a_folder_that_cannot_be_made_is_complained_of_once_and_harms_no_cell() throws IOException {
        Files.writeString(folder.resolve("state"), "a file in the way");
        try (History history = history()) {
            history.keep(1, "a", "");
            history.keep(2, "b", "");
            assertEquals(List.of(), history.earlier());
        }
        assertEquals(1, complaints.size());
        assertTrue(complaints.get(0).startsWith("Cells are not kept"), complaints.get(0));
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has other rights than owner, group and others")
    void nobody_but_the_owner_can_read_the_files() throws IOException {
        withCell("mine").close();
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(cells())));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(files().get(0))));
        Path shell = HistoryFolder.shellFile(cells()).orElseThrow();
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(shell)));
        Files.writeString(shell, "what was typed");
        assertEquals(
                "what was typed",
                Files.readString(HistoryFolder.shellFile(cells()).orElseThrow()),
                "it stays");
        assertEquals(1, history().earlier().size(), "the cells of the shell are no session of a notebook");
    }

    @Test
    void where_no_folder_can_be_made_the_shell_keeps_nothing() throws IOException {
        Path file = Files.writeString(folder.resolve("a file"), "");
        assertEquals(Optional.empty(), HistoryFolder.shellFile(file.resolve("history")));
    }

    @Test
    void without_a_folder_the_session_is_the_first_and_only_one() {
        History none = History.none();
        none.keep(1, "a", "");
        assertEquals(1, none.session());
        assertEquals(List.of(), none.earlier());
    }

    @Test
    void the_folder_is_where_the_system_keeps_state_unless_a_variable_names_another_or_none() {
        Path home = Path.of("home", "engineer");
        assertEquals(
                Optional.of(home.resolve(Path.of(".local", "state", "headrace", "history"))),
                HistoryFolder.ofUser(Map.of(), "Linux", home));
        assertEquals(
                Optional.of(Path.of("st", "headrace", "history")),
                HistoryFolder.ofUser(Map.of("XDG_STATE_HOME", "st"), "Linux", home));
        assertEquals(
                Optional.of(home.resolve(Path.of("Library", "Application Support", "headrace", "history"))),
                HistoryFolder.ofUser(Map.of(), "Mac OS X", home));
        assertEquals(
                Optional.of(Path.of("local", "headrace", "history")),
                HistoryFolder.ofUser(Map.of("LOCALAPPDATA", "local"), "Windows 11", home));
        assertEquals(
                Optional.of(Path.of("mine")), HistoryFolder.ofUser(Map.of("HEADRACE_HISTORY", "mine"), "Linux", home));
        assertEquals(Optional.empty(), HistoryFolder.ofUser(Map.of("HEADRACE_HISTORY", ""), "Linux", home));
    }
}

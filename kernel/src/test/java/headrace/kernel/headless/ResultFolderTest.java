package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import headrace.kernel.headless.page.Page;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ResultFolderTest {
    private static final String EMPTY = "{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}, \"cells\": []}";

    @TempDir
    Path folder;

    private Path file;
    private RunInput input;

    @BeforeEach
    void write_an_input() throws IOException {
        file = Files.writeString(Files.createDirectory(folder.resolve("in")).resolve("pump.ipynb"), EMPTY);
        input = RunInput.read(file);
    }

    @Test
    void the_default_stands_under_the_current_folder_and_is_named_like_the_input() {
        assertEquals(Path.of("headrace-out/pump"), ResultFolder.defaultFor(input));
    }

    @Test
    void the_folder_of_the_input_is_refused_and_the_input_left_alone() throws IOException {
        assertRefused(file.getParent());
        assertEquals(EMPTY, Files.readString(file));
    }

    @Test
    void a_link_to_the_folder_of_the_input_is_refused() throws IOException {
        assertRefused(Files.createSymbolicLink(folder.resolve("link"), file.getParent()));
    }

    @Test
    void a_folder_in_which_the_result_is_a_link_to_the_input_is_refused() throws IOException {
        Path out = Files.createDirectory(folder.resolve("out"));
        Files.createSymbolicLink(out.resolve("pump.ipynb"), file);
        assertRefused(out);
        Files.delete(out.resolve("pump.ipynb"));
        Files.createLink(out.resolve("pump.ipynb"), file);
        assertRefused(out);
    }

    @Test
    void an_input_that_is_a_link_into_the_folder_is_refused() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("pump.ipynb"), file);
        Refusal refusal =
                assertThrows(Refusal.class, () -> ResultFolder.of(RunInput.read(link), Optional.of(file.getParent())));
        assertEquals(RunProblem.WOULD_OVERWRITE, refusal.problem());
    }

    @Test
    void the_input_is_refused_even_if_it_is_the_result_of_an_earlier_run() throws IOException {
        Path out = folder.resolve("out");
        write(ResultFolder.of(input, Optional.of(out)), page());
        RunInput again = RunInput.read(out.resolve("pump.ipynb"));
        assertThrows(Refusal.class, () -> ResultFolder.of(again, Optional.of(out)));
    }

    @Test
    void a_file_of_somebody_else_is_left_alone() throws IOException {
        Path out = Files.createDirectory(folder.resolve("out"));
        Files.writeString(out.resolve("pump.html"), "<p>mine</p>");
        assertRefused(out);
        assertEquals("<p>mine</p>", Files.readString(out.resolve("pump.html")));
    }

    @Test
    void the_results_of_an_earlier_run_are_replaced() throws IOException {
        Path out = folder.resolve("deep/in/out");
        write(ResultFolder.of(input, Optional.of(out)), page());
        ResultFolder results = ResultFolder.of(input, Optional.of(out));
        write(results, page() + "new");
        assertEquals(page() + "new", Files.readString(results.page()));
        assertFalse(Files.exists(out.resolve("pump.html.part")));
    }

    @Test
    void a_file_in_the_place_of_the_folder_is_refused() throws IOException {
        Path out = Files.writeString(folder.resolve("taken"), "");
        Refusal refusal = assertThrows(Refusal.class, () -> ResultFolder.of(input, Optional.of(out)));
        assertEquals(RunProblem.RESULTS_NOT_WRITTEN, refusal.problem());
    }

    private void write(ResultFolder results, String page) {
        results.writeNotebook(input.notebook());
        results.writePage(page);
    }

    private static String page() {
        return "<meta name=\"" + Page.MARK + "\">";
    }

    private void assertRefused(Path out) {
        Refusal refusal = assertThrows(Refusal.class, () -> ResultFolder.of(input, Optional.of(out)));
        assertEquals(RunProblem.WOULD_OVERWRITE, refusal.problem());
    }
}

package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RunInputTest {
    @TempDir
    Path folder;

    @Test
    void an_absent_file_is_refused_with_the_place_where_it_was_looked_for() {
        Path file = folder.resolve("absent.ipynb");
        Refusal refusal = refused(file);
        assertEquals(RunProblem.NOTHING_TO_RUN, refusal.problem());
        assertTrue(refusal.getMessage().contains("looked for at " + file), refusal.getMessage());
    }

    @Test
    void a_folder_is_refused_as_a_folder() throws IOException {
        Path file = Files.createDirectory(folder.resolve("folder.groovy"));
        assertTrue(refused(file).getMessage().contains("a folder, not a file"));
    }

    @Test
    void another_kind_of_file_is_refused_by_its_name() {
        assertEquals(
                RunProblem.NOT_A_SCRIPT, refused(folder.resolve("heron.csv")).problem());
    }

    @Test
    void a_notebook_in_another_language_is_refused_by_the_language() throws IOException {
        for (String metadata : new String[] {
            "{\"language_info\": {\"name\": \"julia\"}}",
            "{\"kernelspec\": {\"name\": \"k\", \"display_name\": \"K\", \"language\": \"julia\"}}"
        }) {
            Refusal refusal = refused(notebook(metadata));
            assertEquals(RunProblem.NOTEBOOK_IN_ANOTHER_LANGUAGE, refusal.problem());
            assertTrue(refusal.getMessage().contains("julia"), refusal.getMessage());
        }
    }

    @Test
    void a_notebook_that_names_no_language_is_read() throws IOException {
        assertEquals(0, RunInput.read(notebook("{}")).notebook().cells().size());
    }

    @Test
    void a_script_that_is_not_utf_8_is_refused_where_it_is_not() throws IOException {
        Path file = folder.resolve("latin.groovy");
        Files.write(file, "a = 1\nb = 'm³'\n".getBytes(StandardCharsets.ISO_8859_1));
        Refusal refusal = refused(file);
        assertEquals(RunProblem.SCRIPT_NOT_UTF_8, refusal.problem());
        assertEquals(2, refusal.place().orElseThrow().line());
    }

    @Test
    void the_byte_order_mark_of_a_script_is_passed_over() throws IOException {
        Path file = Files.writeString(folder.resolve("marked.groovy"), "\uFEFFa = 1");
        assertEquals("a = 1", RunInput.read(file).notebook().cells().get(0).source());
    }

    @Test
    void the_name_and_the_hash_are_those_of_the_file() throws IOException {
        Path file = Files.writeString(folder.resolve("two words.groovy"), "abc");
        RunInput input = RunInput.read(file);
        assertEquals("two words", input.name());
        // FIPS 180-2, appendix B.1: the SHA-256 of "abc".
        assertEquals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", input.sha256());
    }

    @Test
    void code_of_a_script_is_run_under_the_lines_of_its_file() throws IOException {
        Path file = Files.writeString(folder.resolve("lines.groovy"), "a = 1\n// %%\n\nb = 2\n");
        assertEquals("\n\n\nb = 2", RunInput.read(file).codeToRun(1));
    }

    private Path notebook(String metadata) throws IOException {
        return Files.writeString(
                folder.resolve("n.ipynb"),
                "{\"nbformat\": 4, \"nbformat_minor\": 5, \"cells\": [], \"metadata\": " + metadata + "}");
    }

    private static Refusal refused(Path file) {
        return assertThrows(Refusal.class, () -> RunInput.read(file));
    }
}

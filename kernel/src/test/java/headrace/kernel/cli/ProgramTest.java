package headrace.kernel.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.outside.Outside;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program as its user meets it: a process with words, an exit code and files. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(120)
class ProgramTest {
    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void a_notebook_runs_from_the_first_cell_to_the_page() throws Exception {
        Path notebook = folder.resolve("half-flow.ipynb");
        try (var in = ProgramTest.class.getResourceAsStream("/headrace/kernel/headless/half-flow.ipynb")) {
            Files.copy(in, notebook);
        }
        String before = Files.readString(notebook);
        Ended ended = started("run", "half-flow.ipynb").end();
        assertEquals(ExitCode.DONE, ended.code(), ended.printed());
        // 999.5 kg/m³ · 9.80665 m/s² · (52/3600) m³/s · 16 m = 2265 W; (0.4 + 0.6 · 0.5²) · 0.5 = 0.275.
        assertTrue(ended.printed().contains("2265 W"), ended.printed());
        assertTrue(ended.printed().contains("0.275"), ended.printed());
        assertTrue(ended.printed().contains("Page:     headrace-out/half-flow/half-flow.html"), ended.printed());
        assertTrue(Files.readString(folder.resolve("headrace-out/half-flow/half-flow.html"))
                .contains("2265 W"));
        assertEquals(before, Files.readString(notebook));
    }

    /** Of what a user would type, the shell of the rehearsal leaves the cell in the history. */
    @Test
    void a_rehearsal_runs_a_notebook_and_types_into_a_shell_and_leaves_all_in_its_folder() throws Exception {
        Files.writeString(folder.resolve("one.ipynb"), notebook("println 'played'"));
        Ended ended = started("rehearse", "one.ipynb", "scratch").end();
        assertEquals(ExitCode.DONE, ended.code(), ended.printed());
        assertTrue(Files.readString(folder.resolve("scratch/results/one.ipynb")).contains("played"));
        assertTrue(Files.readString(folder.resolve("scratch/history")).contains("1 + 1"));
        assertFalse(started("--help").end().printed().contains("rehearse"), "it is not for users");
    }

    @Test
    void a_failed_cell_is_told_by_the_exit_code_and_leaves_its_error_in_the_notebook() throws Exception {
        Files.writeString(folder.resolve("bad.groovy"), "println 'begun'\n// %%\nthrow new Exception('no flow')\n");
        Ended ended = started("run", "bad.groovy", "-o", "out put").end();
        assertEquals(ExitCode.CELL_FAILED, ended.code(), ended.printed());
        assertTrue(ended.printed().contains("line 3"), ended.printed());
        assertTrue(Files.readString(folder.resolve("out put/bad.ipynb")).contains("no flow"));
        assertTrue(Files.exists(folder.resolve("out put/bad.html")));
    }

    @Test
    void a_teacher_seals_a_notebook_and_grades_what_comes_back() throws Exception {
        String exercise = "two = exercise('two', 'Twice one metre?', answer: 2.m)";
        Files.writeString(folder.resolve("teacher.ipynb"), notebook(exercise, "check(two, 2.m)"));
        Ended sealed = started("seal", "teacher.ipynb").end();
        assertEquals(ExitCode.DONE, sealed.code(), sealed.printed());
        assertTrue(sealed.printed().contains("it is not secret"), sealed.printed());
        String students = Files.readString(folder.resolve("teacher-students.ipynb"));
        assertFalse(students.contains("2.m"), students);
        Files.writeString(folder.resolve("right.ipynb"), students.replace("check(two)", "check(two, 200.cm)"));
        Files.writeString(folder.resolve("wrong.ipynb"), students.replace("check(two)", "check(two, 3.m)"));
        Ended graded = started("run", "--grade", "right.ipynb", "wrong.ipynb", "teacher-students.ipynb", "-o", "g")
                .end();
        assertEquals(ExitCode.DONE, graded.code(), graded.printed());
        assertTrue(graded.printed().contains("right.ipynb: 1 right, 0 wrong, 0 not answered of 1"), graded.printed());
        assertTrue(graded.printed().contains("wrong.ipynb: 0 right, 1 wrong, 0 not answered of 1"), graded.printed());
        assertTrue(graded.printed().contains("students.ipynb: 0 right, 0 wrong, 1 not answered"), graded.printed());
        assertTrue(Files.readString(folder.resolve("g/grades.csv")).contains("right.ipynb,two,2 m,right"));
    }

    @Test
    void a_bad_file_is_told_by_the_exit_code_of_a_grading_and_the_others_are_graded() throws Exception {
        Files.writeString(folder.resolve("one.ipynb"), notebook("a = exercise('a', 'Two?', answer: 2)", "check(a, 2)"));
        Files.writeString(folder.resolve("bad.ipynb"), "no notebook");
        Ended ended = started("run", "--grade", "bad.ipynb", "one.ipynb").end();
        assertEquals(ExitCode.BAD_FILE, ended.code(), ended.printed());
        assertTrue(ended.printed().contains("one.ipynb: 1 right"), ended.printed());
        assertEquals(
                ExitCode.USAGE, started("run", "one.ipynb", "one.ipynb").end().code());
    }

    @Test
    void nothing_but_a_sealed_notebook_is_written_over() throws Exception {
        Files.writeString(folder.resolve("t.ipynb"), notebook("a = exercise('a', 'Two?', answer: 2)", "check(a)"));
        Files.writeString(folder.resolve("mine.ipynb"), "my own");
        Ended ended = started("seal", "t.ipynb", "-o", "mine.ipynb").end();
        assertEquals(ExitCode.NOT_WRITTEN, ended.code(), ended.printed());
        assertEquals("my own", Files.readString(folder.resolve("mine.ipynb")));
        assertEquals(
                ExitCode.NOT_WRITTEN,
                started("seal", "t.ipynb", "-o", "t.ipynb").end().code());
        assertEquals(ExitCode.DONE, started("seal", "t.ipynb").end().code());
        assertEquals(ExitCode.DONE, started("seal", "t.ipynb").end().code(), "a sealed one is");
    }

    private static String notebook(String... cells) {
        return new Notebook(
                        Fields.NONE,
                        Arrays.stream(cells)
                                .map(Cell::code)
                                .map(Cell.class::cast)
                                .toList())
                .toJson();
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no signal by which a test could stop a process")
    void an_interrupt_stops_the_cell_and_leaves_what_has_run() throws Exception {
        Files.writeString(folder.resolve("long.groovy"), "println 'half way'\nwhile (true) {}\n");
        Started run = started("run", "long.groovy");
        run.waitFor("half way");
        new ProcessBuilder("kill", "-INT", Long.toString(run.process().pid()))
                .start()
                .waitFor();
        Ended ended = run.end();
        assertEquals(ExitCode.STOPPED, ended.code(), ended.printed());
        assertTrue(ended.printed().contains("stopped by its user at cell 1"), ended.printed());
        assertTrue(
                Files.readString(folder.resolve("headrace-out/long/long.ipynb")).contains("half way"));
    }

    @Test
    void a_cell_that_ends_the_process_does_not_count_as_having_run() throws Exception {
        Files.writeString(folder.resolve("exit.groovy"), "println 'begun'\nSystem.exit(0)\n");
        Ended ended = started("run", "exit.groovy").end();
        assertFalse(ended.code() == ExitCode.DONE, ended.printed());
        assertTrue(
                Files.readString(folder.resolve("headrace-out/exit/exit.ipynb")).contains("begun"));
    }

    @Test
    void an_absent_file_and_a_bad_one_are_told_by_the_exit_code_and_three_sentences() throws IOException {
        assertEquals(
                ExitCode.BAD_FILE, execute("run", folder.resolve("absent.ipynb").toString()));
        assertTrue(err.toString().contains("There is no file of this name. "), err.toString());
        Path broken = Files.writeString(folder.resolve("broken.ipynb"), "{\n \"nbformat\": 4,\n");
        assertEquals(ExitCode.BAD_FILE, execute("run", broken.toString()));
        assertTrue(err.toString().contains("broken.ipynb:3:1: "), err.toString());
        assertFalse(err.toString().contains("\tat "), err.toString());
    }

    @Test
    void a_result_that_would_cover_its_input_has_an_exit_code_of_its_own() throws IOException {
        Path file = Files.writeString(
                folder.resolve("a.ipynb"), "{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}, \"cells\": []}");
        assertEquals(ExitCode.NOT_WRITTEN, execute("run", file.toString(), "--output", folder.toString()));
    }

    @Test
    void a_command_line_that_is_not_understood_is_answered_with_what_is() {
        assertEquals(ExitCode.USAGE, execute());
        assertEquals(ExitCode.USAGE, execute("run"));
        assertEquals(ExitCode.USAGE, execute("walk", "a.ipynb"));
        assertEquals(ExitCode.USAGE, execute("run", "--fast", "a.ipynb"));
        assertTrue(err.toString().contains("Usage: headrace run"), err.toString());
    }

    @Test
    void help_and_version_say_what_one_expects() {
        assertEquals(ExitCode.DONE, execute("--help"));
        assertEquals(ExitCode.DONE, execute("run", "--help"));
        assertTrue(out.toString().contains("--output=DIR"), out.toString());
        assertTrue(out.toString().contains("lines that begin with // %%;"), out.toString());
        assertEquals(ExitCode.DONE, execute("--version"));
        assertTrue(
                out.toString()
                        .matches("(?s).*Headrace \\d+\\.\\d+\\.\\d\\S*\nJDK \\d+\\S* \\(.+\\)\nGroovy \\d+\\.\\S+\n"),
                out.toString());
    }

    private int execute(String... arguments) {
        return Main.execute(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    private Started started(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "headrace.kernel.cli.Main"));
        command.addAll(List.of(arguments));
        Path printed = folder.resolve("printed.txt");
        Process process = new ProcessBuilder(Outside.hearing(command))
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(printed.toFile())
                .start();
        return new Started(process, printed);
    }

    private record Ended(int code, String printed) {}

    private record Started(Process process, Path output) {
        void waitFor(String text) throws IOException, InterruptedException {
            while (!Files.readString(output).contains(text + "\n") && process.isAlive()) {
                process.waitFor(20, TimeUnit.MILLISECONDS);
            }
        }

        Ended end() throws IOException, InterruptedException {
            if (!process.waitFor(100, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
            return new Ended(process.waitFor(), Files.readString(output, StandardCharsets.UTF_8));
        }
    }
}

package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.headless.page.Edition;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.groovy.GroovySession;
import headrace.problem.Refusal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RunParametersTest {
    private static final String SCRIPT = """
            // %% [parameters]
            flow = 20.m3ph
            times = 2
            place = 'library'
            // %% Result
            "$place ${flow * times}"
            """;

    @TempDir
    Path folder;

    @Test
    void without_parameters_the_usual_values_stand() throws IOException {
        assertTrue(printed(SCRIPT, RunParameters.of(null, List.of())).contains("library 40 m³/h"));
    }

    @Test
    void values_with_units_numbers_and_texts_take_the_place_of_the_usual_ones() throws IOException {
        RunParameters given = RunParameters.of(null, List.of("flow=230 gpm", "times=3", "place=mill's end"));
        String printed = printed(SCRIPT, given);
        assertTrue(printed.contains("mill's end 156.7 m³/h"), printed);
        String notebook = Files.readString(folder.resolve("out/a.ipynb"));
        assertTrue(notebook.contains("injected-parameters"), notebook);
    }

    @Test
    void the_command_line_counts_before_the_file() throws IOException {
        Path file = Files.writeString(folder.resolve("p.txt"), "# a remark\nflow = 10 m3/h\ntimes = 5\n");
        RunParameters given = RunParameters.of(file, List.of("times=4"));
        assertEquals(Map.of("flow", "10 m3/h", "times", "4"), given.values());
    }

    @Test
    void a_remark_in_the_file_may_stand_behind_a_value_too() throws IOException {
        Path file =
                Files.writeString(folder.resolve("p.txt"), "flow = 10 m3/h  # as built\nplace = room#4\n # no more\n");
        assertEquals(
                Map.of("flow", "10 m3/h", "place", "room#4"),
                RunParameters.of(file, List.of()).values());
    }

    @Test
    void a_value_may_be_a_list_each_with_its_unit() throws IOException {
        String script = "// %% [parameters]\nflows = [20.m3ph]\n// %%\nflows.collect { it * 2 }";
        RunParameters given = RunParameters.of(null, List.of("flows=[10 m3/h, 230 gpm]"));
        String printed = printed(script, given);
        assertTrue(printed.contains("[20 m³/h, 104.5 m³/h]"), printed);
    }

    /** 40 % of 50 m³/h. */
    @Test
    void a_notebook_in_Java_takes_them_for_its_typed_variables_too() throws IOException {
        Notebook notebook = new Notebook(
                Fields.NONE,
                List.of(
                        Cell.code("var share = percent(35);\nint times = 1;\nString place = \"a\";")
                                .with(Fields.NONE.with("tags", List.of("parameters"))),
                        Cell.code("place + \" \" + m3ph(50).times(share.value()).times(times)")));
        RunInput input = new RunInput(Path.of("a.ipynb"), notebook, List.of(1, 1), Language.JAVA, "");
        RunInput given = RunParameters.of(null, List.of("share=40 %", "times=2", "place=mill's end"))
                .in(input);
        Outcome last = new Outcome.Done();
        try (GroovySession session = new GroovySession(Language.JAVA)) {
            for (Cell cell : given.notebook().cells()) {
                last = session.run(cell.source(), true, Output.UNHEARD);
            }
        }
        assertEquals("mill's end 40 m³/h", ((Outcome.Value) last).bundle().text());
    }

    @Test
    void a_name_that_the_cell_does_not_assign_is_refused_with_the_nearest() {
        Refusal refusal =
                assertThrows(Refusal.class, () -> printed(SCRIPT, RunParameters.of(null, List.of("flwo=3 m3/h"))));
        assertEquals(RunProblem.WRONG_PARAMETER, refusal.problem());
        assertTrue(refusal.getMessage().contains("flow"), refusal.getMessage());
    }

    @Test
    void what_is_no_parameter_is_refused_with_its_line() throws IOException {
        Path file = Files.writeString(folder.resolve("p.txt"), "flow = 3 m3/h\nnonsense\n");
        Refusal refusal = assertThrows(Refusal.class, () -> RunParameters.of(file, List.of()));
        assertTrue(refusal.getMessage().contains("p.txt:2:"), refusal.getMessage());
        assertThrows(Refusal.class, () -> RunParameters.of(null, List.of("=3")));
        assertThrows(Refusal.class, () -> printed("1 + 1", RunParameters.of(null, List.of("flow=3 m3/h"))));
    }

    @Test
    void a_cell_that_takes_longer_than_it_may_is_stopped_and_the_run_says_so() throws IOException {
        HeadlessRun.Choices choices =
                new HeadlessRun.Choices(new RunParameters(Map.of()), Optional.of(Duration.ofMillis(300)), true);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertEquals(Ending.TIMED_OUT, run("1 + 1\n// %%\nwhile (true) {}\n// %%\n2 + 2", choices, out));
        String printed = out.toString(StandardCharsets.UTF_8);
        assertTrue(printed.contains("Cell 2 took longer than it may"), printed);
        assertTrue(printed.contains("took 0."), printed);
    }

    @Test
    void times_are_kept_only_where_they_are_asked_for() throws IOException {
        printed("1 + 1", RunParameters.of(null, List.of()));
        assertFalse(Files.readString(folder.resolve("out/a.ipynb")).contains("iopub.execute_input"));
    }

    private String printed(String script, RunParameters parameters) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        run(script, new HeadlessRun.Choices(parameters, Optional.empty(), false), out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private Ending run(String script, HeadlessRun.Choices choices, ByteArrayOutputStream out) throws IOException {
        Path file = Files.writeString(folder.resolve("a.groovy"), script);
        RunInput input = RunInput.read(file);
        TerminalView view = new TerminalView(new PrintStream(out, true, StandardCharsets.UTF_8), false, 80);
        ResultFolder results = ResultFolder.of(input, Optional.of(folder.resolve("out")));
        Edition edition = new Edition("1", "17", "5", LocalDate.of(2026, 3, 14));
        try (GroovySession session = new GroovySession()) {
            return new HeadlessRun(input, results, view, edition, session, choices).run();
        }
    }
}

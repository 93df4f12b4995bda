package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.headless.page.Edition;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class HeadlessRunTest {
    private static final Edition EDITION = new Edition("1.2.3", "17.0.9", "5.0.1", LocalDate.of(2026, 3, 14));

    @TempDir
    Path folder;

    private final ByteArrayOutputStream printed = new ByteArrayOutputStream();
    private final ScriptedSession session = new ScriptedSession();

    @Test
    void every_cell_runs_in_order_and_its_results_are_printed_and_written() throws IOException {
        session.on("one", output -> {
                    output.print("work");
                    output.print("ing\n");
                    output.printError("careful\n");
                    return ScriptedSession.value("6.291 m");
                })
                .on("two", output -> new Outcome.Done());
        assertEquals(Ending.COMPLETE, run(false, "// %% Head\none", "two"));
        assertEquals(
                List.of("one", "two"), session.asked.stream().map(String::strip).toList());
        assertEquals("""

                Head

                1  one
                working
                careful
                6.291 m

                2  two

                All 2 cells of code ran.
                Notebook: out/run.ipynb
                Page:     out/run.html
                """, text());
        String notebook = Files.readString(out("run.ipynb"));
        assertTrue(notebook.contains("\"working\\n\""), notebook);
        assertTrue(notebook.contains("\"name\": \"stderr\""), notebook);
        assertTrue(notebook.contains("\"execution_count\": 2"), notebook);
        assertTrue(notebook.contains("\"version\": \"5.0.1\""), notebook);
        assertTrue(Files.readString(out("run.html")).contains("6.291 m"));
    }

    @Test
    void a_failed_cell_ends_the_run_and_leaves_the_partial_notebook_and_page() throws IOException {
        session.on("bad", output -> ScriptedSession.failed("flow-out-of-range"));
        assertEquals(Ending.FAILED, run(false, "good", "bad", "never"));
        assertEquals(2, session.asked.size());
        String notebook = Files.readString(out("run.ipynb"));
        assertTrue(notebook.contains("\"ename\": \"flow-out-of-range\""), notebook);
        assertTrue(notebook.contains("\"execution_count\": null"), notebook);
        String page = Files.readString(out("run.html"));
        assertTrue(page.contains("Cell 2 failed (flow-out-of-range); the cell after it did not run."), page);
        assertTrue(page.contains("Script, not run"), page);
        assertTrue(text().contains("Cell 2 failed (flow-out-of-range)"), text());
    }

    @Test
    void a_cell_that_may_fail_does_not_end_the_run_and_a_skipped_one_does_not_run() throws IOException {
        session.on("bad", output -> ScriptedSession.failed("flow-out-of-range"));
        Path file = notebook(cell("bad", "raises-exception"), cell("skipped", "skip-execution"), cell("last", ""));
        assertEquals(Ending.COMPLETE, run(RunInput.read(file), session, false));
        assertEquals(List.of("bad", "last"), session.asked);
    }

    @Test
    void blank_cells_do_not_run_and_get_no_number() throws IOException {
        assertEquals(Ending.COMPLETE, run(RunInput.read(notebook(cell(" ", ""), cell("last", ""))), session, false));
        assertEquals(List.of("last"), session.asked);
        assertTrue(Files.readString(out("run.ipynb")).contains("\"execution_count\": 1"));
    }

    @Test
    void something_shown_anew_replaces_what_earlier_cells_showed_under_its_name() throws IOException {
        session.on("show", output -> {
                    output.show(MimeBundle.plain("old"), Optional.of("gauge"));
                    return new Outcome.Done();
                })
                .on("update", output -> {
                    output.update(MimeBundle.plain("new"), "gauge");
                    output.update(MimeBundle.plain("nowhere"), "unknown");
                    return new Outcome.Done();
                });
        run(false, "show", "update");
        String notebook = Files.readString(out("run.ipynb"));
        assertTrue(notebook.contains("\"new\""), notebook);
        assertFalse(notebook.contains("\"old\""), notebook);
        assertFalse(notebook.contains("\"nowhere\""), notebook);
    }

    @Test
    void a_bar_that_is_drawn_anew_and_emptied_leaves_nothing_behind() throws IOException {
        session.on("work", this::workWithBar);
        run(false, "work");
        assertFalse(text().contains("half"), text());
        assertTrue(text().contains("\nbeforeafter\n"), text());
        String notebook = Files.readString(out("run.ipynb"));
        assertFalse(notebook.contains("display_data"), notebook);
    }

    @Test
    void a_terminal_sees_the_bar_while_it_grows() {
        session.on("work", this::workWithBar);
        run(true, "work");
        String seen = text().replaceAll("\u001b\\[\\?7[lh]", "");
        assertTrue(seen.contains("before\nhalf\r\u001b[Kwhole\r\u001b[Kafter\n"), seen);
    }

    private Outcome workWithBar(Output output) {
        output.print("before");
        output.show(MimeBundle.plain("half"), Optional.of("bar"));
        output.update(MimeBundle.plain("whole"), "bar");
        output.update(MimeBundle.plain(""), "bar");
        output.print("after\n");
        return new Outcome.Done();
    }

    @Test
    void how_far_a_calculation_is_passes_on_a_terminal_and_is_no_output_of_the_notebook() throws IOException {
        session.on("work", output -> {
            output.progress(new HowFar("hours", 0.4, Optional.of(Duration.ofSeconds(25))));
            output.progressEnded();
            output.print("after\n");
            return new Outcome.Done();
        });
        run(true, "work");
        assertTrue(text().contains("hours: 40 %, about 25 s left ["), text());
        assertTrue(text().contains("\r\u001b[Kafter\n"), text());
        String notebook = Files.readString(out("run.ipynb"));
        assertTrue(notebook.contains("after") && !notebook.contains("hours:"), notebook);
    }

    @Test
    void what_is_drawn_anew_is_printed_once_as_it_is_in_the_end() {
        session.on("gauge", output -> {
            output.show(MimeBundle.plain("10 m"), Optional.of("gauge"));
            output.update(MimeBundle.plain("16 m"), "gauge");
            return new Outcome.Done();
        });
        run(false, "gauge");
        assertTrue(text().contains("gauge\n16 m\n"), text());
        assertFalse(text().contains("10 m"), text());
    }

    @Test
    void a_cell_can_take_away_what_it_has_shown_at_once_or_with_the_next_output() throws IOException {
        session.on("at once", output -> {
                    output.print("first");
                    output.clear(false);
                    return new Outcome.Done();
                })
                .on("later", output -> {
                    output.print("second");
                    output.clear(true);
                    output.print("third");
                    return new Outcome.Done();
                })
                .on("never", output -> {
                    output.print("fourth");
                    output.clear(true);
                    return new Outcome.Done();
                });
        run(false, "at once", "later", "never");
        String notebook = Files.readString(out("run.ipynb"));
        assertFalse(notebook.contains("\"first\""), notebook);
        assertFalse(notebook.contains("\"second\""), notebook);
        assertTrue(notebook.contains("\"third\""), notebook);
        assertTrue(notebook.contains("\"fourth\""), notebook);
    }

    @Test
    @Timeout(60)
    void a_stopped_run_ends_the_cell_and_leaves_the_partial_notebook() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        session.on("long", output -> {
            output.print("half way\n");
            begun.countDown();
            while (!session.interrupted) {
                Thread.onSpinWait();
            }
            return ScriptedSession.failed("stopped");
        });
        HeadlessRun run = prepared(script("long", "never"), session, false);
        Ending[] ending = new Ending[1];
        Thread cells = new Thread(() -> ending[0] = run.run());
        cells.start();
        begun.await();
        run.stop(Duration.ofMinutes(1));
        cells.join();
        assertEquals(Ending.STOPPED, ending[0]);
        assertEquals(1, session.asked.size());
        assertTrue(Files.readString(out("run.ipynb")).contains("half way"));
        assertTrue(Files.readString(out("run.html")).contains("stopped by its user at cell 1"));
    }

    @Test
    @Timeout(60)
    void a_cell_that_does_not_stop_costs_only_its_own_results() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch released = new CountDownLatch(1);
        session.on("deaf", output -> {
            output.print("begun\n");
            begun.countDown();
            try {
                released.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return new Outcome.Done();
        });
        HeadlessRun run = prepared(script("good", "deaf"), session, false);
        Thread cells = new Thread(run::run);
        cells.start();
        begun.await();
        run.stop(Duration.ZERO);
        assertTrue(Files.readString(out("run.ipynb")).contains("begun"));
        released.countDown();
        cells.join();
    }

    @Test
    void nobody_can_be_asked() {
        session.on(
                "ask",
                output -> ScriptedSession.value(output.ask("Name? ", false).toString()));
        run(false, "ask");
        assertTrue(text().contains("Optional.empty"), text());
    }

    @Test
    void text_from_a_script_cannot_command_the_terminal() {
        session.on("evil", output -> {
            output.print("\u001b]0;title\u0007\u001b[2J\u009b31mred\n");
            return ScriptedSession.value("\u001b[31mvalue\u001b[0m");
        });
        run(false, "evil");
        assertFalse(text().matches("(?s).*[\\p{Cntrl}&&[^\\n]].*"), text());
        assertTrue(text().contains("red"), text());
    }

    @Test
    void colours_are_used_only_where_they_are_understood() {
        session.on("bad", output -> ScriptedSession.failed("flow-out-of-range"));
        run(true, "bad");
        assertTrue(text().contains("\u001b[31mAsked. Possible. Next\u001b[0m"), text());
        printed.reset();
        run(false, "bad");
        assertFalse(text().contains("\u001b"), text());
    }

    @Test
    void the_same_run_writes_the_same_files() throws IOException {
        session.on("one", output -> ScriptedSession.value("1"));
        run(false, "one");
        String notebook = Files.readString(out("run.ipynb"));
        String page = Files.readString(out("run.html"));
        run(false, "one");
        assertEquals(notebook, Files.readString(out("run.ipynb")));
        assertEquals(page, Files.readString(out("run.html")));
    }

    @Test
    void a_notebook_in_java_runs_with_cells_of_both_languages_and_stays_in_java() throws IOException {
        Path file = Files.writeString(
                folder.resolve("run.ipynb"),
                "{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {\"kernelspec\": {\"name\": \"headrace-java\","
                        + " \"display_name\": \"Headrace (Java)\", \"language\": \"java\"}}, \"cells\": ["
                        + cell("int twice(int x) { return 2 * x; }", "") + ", "
                        + cell("%%groovy\\nlist = [20, 1].collect { twice(it) }; list", "") + ", "
                        + cell("list.get(0) + list.get(1)", "") + "]}");
        RunInput input = RunInput.read(file);
        assertEquals(Language.JAVA, input.language());
        try (GroovySession java = GroovySession.in(folder, folder, input.language())) {
            assertEquals(Ending.COMPLETE, run(input, java, false));
        }
        assertTrue(text().contains("[40, 2]") && text().contains("\n42\n"), text());
        String written = Files.readString(out("run.ipynb"));
        assertTrue(written.contains("\"name\": \"java\"") && written.contains("headrace-java"), written);
        assertTrue(Files.readString(out("run.html")).contains("<span class=\"keyword\">%%groovy</span>"));
    }

    private Ending run(boolean coloured, String... cells) {
        return run(script(cells), session, coloured);
    }

    private Ending run(RunInput input, Session by, boolean coloured) {
        return prepared(input, by, coloured).run();
    }

    private HeadlessRun prepared(RunInput input, Session by, boolean coloured) {
        TerminalView view = new TerminalView(new PrintStream(printed, true, StandardCharsets.UTF_8), coloured, 80);
        return new HeadlessRun(input, ResultFolder.of(input, Optional.of(folder.resolve("out"))), view, EDITION, by);
    }

    private RunInput script(String... cells) {
        try {
            return RunInput.read(Files.writeString(folder.resolve("run.groovy"), String.join("\n// %%\n", cells)));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private Path notebook(String... cells) throws IOException {
        return Files.writeString(
                folder.resolve("run.ipynb"),
                "{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}, \"cells\": [" + String.join(",", cells)
                        + "]}");
    }

    private static String cell(String source, String tag) {
        String tags = tag.isEmpty() ? "" : "\"tags\": [\"" + tag + "\"]";
        return "{\"cell_type\": \"code\", \"metadata\": {" + tags + "}, \"source\": \"" + source + "\"}";
    }

    private Path out(String name) {
        return folder.resolve("out").resolve(name);
    }

    private String text() {
        return printed.toString(StandardCharsets.UTF_8).replace(folder + "/", "");
    }
}

package headrace.kernel.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.session.Output;
import headrace.kernel.session.groovy.GroovySession;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jline.reader.Candidate;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.Parser;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.LineDisciplineTerminal;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Types into a shell as a person would, and reads what stands on the screen. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ShellTest {
    private static final String CTRL_C = "\u0003";
    private static final String CTRL_D = "\u0004";
    private static final String WAIT = "wait for ";
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    @TempDir
    Path folder;

    @Test
    void a_cell_of_several_lines_runs_when_it_is_whole_and_shows_its_value() {
        String screen = typed("def twice(x) {", "    x * 2", "}", "twice(3.kW)");
        assertTrue(screen.contains("6 kW"), screen);
    }

    @Test
    void a_table_that_is_all_there_is_says_its_title_once() {
        String screen = typed("[cost('pump', 5000.USD), cost('seal', 90.USD)]");
        assertTrue(screen.contains("5000 USD"), screen);
        assertEquals(1, screen.split("Costs", -1).length - 1, screen);
    }

    @Test
    void a_what_if_is_shown_where_it_begins_and_nothing_else_of_it_is_computed() {
        String screen = typed("computed = []", "whatIf(n: 1..5) { computed << it; \"at $it\" }", "computed");
        assertTrue(screen.contains("at 3"), screen);
        assertTrue(screen.contains("[3]"), screen);
    }

    @Test
    void tab_completes_a_word() {
        String screen = typed("quadr\t(duty(80.m3ph, 20.m), minimumHead: 40.percent).headAt(40.m3ph)");
        assertTrue(screen.contains("11 m"), screen);
    }

    @Test
    void a_misspelt_word_is_answered_with_the_nearest_and_the_shell_goes_on() {
        String screen = typed("desing = 3", "desingn + 1", "40.percent * 2");
        assertTrue(screen.contains("The nearest is desing"), screen);
        assertTrue(screen.contains("80 %"), screen);
    }

    @Test
    void ctrl_c_stops_a_running_cell_and_the_shell_goes_on() {
        String screen = typed("println('be' + 'gun'); while (true) {}", WAIT + "begun", CTRL_C, "2.kW + 3.kW");
        assertTrue(screen.contains("The cell was stopped"), screen);
        assertTrue(screen.contains("5 kW"), screen);
    }

    @Test
    void a_long_calculation_says_how_far_it_is_in_a_line_that_goes_when_ctrl_c_stops_it() {
        String screen = typed(
                "for (i in 0..999) { headrace.work.Work.progress('weighing', i, 1000); sleep(10) }",
                WAIT + " left",
                CTRL_C,
                "2.kW + 3.kW");
        assertTrue(screen.matches("(?s).*weighing: \\d+ %, about \\d+ s left \\[#*\\.+].*"), screen);
        assertTrue(screen.contains("The cell was stopped"), screen);
        assertTrue(screen.contains("5 kW"), screen);
    }

    @Test
    void without_a_terminal_nothing_is_said_of_how_far_a_calculation_is() {
        StringWriter out = new StringWriter();
        try (GroovySession session = new GroovySession()) {
            new PipedShell(session, new PrintWriter(out), false)
                    .run(new StringReader(
                            "for (i in 0..9) { headrace.work.Work.progress('weighing', i, 10); sleep(60) }\n7\n"));
        }
        assertEquals("7", out.toString().strip());
    }

    @Test
    void a_cell_that_begins_with_its_language_goes_on_in_the_next_line() {
        String screen = typed("%%java", "Math.max(41, 42)");
        assertTrue(screen.contains("42\r\n"), screen);
        assertFalse(screen.contains("not-understood"), screen);
    }

    @Test
    void where_no_colours_are_wanted_there_are_none() {
        String cell = "println 'text'; chart(systemCurve(duty(52.m3ph, 16.m))); nothing";
        String colour = "\u001b\\[(?:[0-9]+;)*(?:3[0-8]|4[0-8])(?:;[0-9]+)*m";
        assertTrue(Pattern.compile(colour).matcher(commanded(true, 100, cell)).find());
        String plain = commanded(false, 100, cell, "chart(systemCurve(duty(52.m3ph, 16.m)))");
        assertFalse(Pattern.compile(colour).matcher(plain).find(), plain);
    }

    @Test
    void what_is_printed_or_told_is_broken_at_blanks_in_a_narrow_terminal() {
        String told = "'the head at 52.25 m³/h and 1450 rpm is 16.75 m and no more than that'";
        String screen = commanded(false, 40, "println(" + told + ")", told, "help('quadratic')")
                .replace("\r", "");
        assertTrue(screen.contains("the head at 52.25 m³/h and 1450 rpm is\n  16.75 m and no more"), screen);
        assertTrue(screen.contains("square of\n      flow from the minimum head at no\n"), screen);
    }

    @Test
    void what_completion_tells_of_a_member_fits_in_the_line_that_begins_under_it() throws IOException {
        try (Terminal terminal = terminal(new ByteArrayOutputStream(), 60);
                GroovySession session = new GroovySession()) {
            session.run("law = quadratic(duty(52.m3ph, 16.m), minimumHead: 4.m)", true, Output.UNHEARD);
            CellEditing editing = new CellEditing(session);
            LineReader reader = LineReaderBuilder.builder().terminal(terminal).build();
            String typed = "x = [1, law.";
            List<Candidate> candidates = new ArrayList<>();
            editing.complete(reader, editing.parse(typed, typed.length(), Parser.ParseContext.COMPLETE), candidates);
            int widest = candidates.stream()
                    .mapToInt(one -> one.displ().length())
                    .max()
                    .orElseThrow();
            for (Candidate one : candidates) {
                int told =
                        one.descr() == null ? 0 : " ()".length() + one.descr().length();
                assertTrue("2> ".length() + typed.length() + widest + told < 60, one.displ() + " " + one.descr());
            }
            assertTrue(candidates.stream().anyMatch(one -> one.displ().equals("headAt")), "members are there");
        }
    }

    @Test
    void at_a_terminal_that_knows_no_commands_there_is_a_prompt() {
        StringWriter out = new StringWriter();
        try (GroovySession session = new GroovySession()) {
            new PipedShell(session, new PrintWriter(out), true).run(new StringReader("[1,\n2]\n"));
        }
        assertEquals("1> >> [1, 2]" + System.lineSeparator() + "2> ", out.toString());
    }

    @Test
    void cells_are_remembered_in_the_history_file() throws IOException {
        typed("52.m3ph");
        assertTrue(Files.readString(folder.resolve("history")).contains("52.m3ph"));
    }

    @Test
    void without_a_terminal_results_are_plain_text_and_a_failure_is_told() {
        StringWriter out = new StringWriter();
        try (GroovySession session = new GroovySession()) {
            PipedShell shell = new PipedShell(session, new PrintWriter(out), false);
            assertFalse(shell.run(new StringReader("x = 52.m3ph\nprintln(\n  x)\nnothing\nx * 2\n")));
        }
        assertEquals("52 m³/h", out.toString().lines().findFirst().orElse(""), out.toString());
        assertTrue(out.toString().contains("'nothing'"), out.toString());
        assertTrue(out.toString().strip().endsWith("104 m³/h"), out.toString());
        assertFalse(out.toString().contains("\u001b"), "no escape codes where there is no terminal");
    }

    /** Types lines and then Ctrl-D, and returns all that came to the screen, without its commands. */
    private String typed(String... lines) {
        return commanded(true, 100, lines).replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "");
    }

    /** The same with the commands. */
    private String commanded(boolean coloured, int columns, String... lines) {
        ByteArrayOutputStream screen = new ByteArrayOutputStream();
        assertTimeoutPreemptively(PATIENCE, () -> {
            try (LineDisciplineTerminal terminal = terminal(screen, columns);
                    GroovySession session = new GroovySession()) {
                Thread typist = new Thread(() -> type(terminal, screen, lines));
                typist.start();
                new Shell(
                                session,
                                terminal,
                                new Shell.Choices(Charts.DOTS, Optional.of(folder.resolve("history")), coloured))
                        .run("Welcome");
                typist.join();
            }
        });
        return screen.toString(StandardCharsets.UTF_8);
    }

    private static LineDisciplineTerminal terminal(ByteArrayOutputStream screen, int columns) throws IOException {
        LineDisciplineTerminal terminal =
                new LineDisciplineTerminal("test", "xterm-256color", screen, StandardCharsets.UTF_8);
        terminal.setSize(Size.of(columns, 40));
        return terminal;
    }

    private static void type(LineDisciplineTerminal terminal, ByteArrayOutputStream screen, String... lines) {
        try {
            for (String line : lines) {
                if (line.startsWith(WAIT)) {
                    while (!screen.toString(StandardCharsets.UTF_8).contains(line.substring(WAIT.length()))) {
                        Thread.onSpinWait();
                    }
                } else {
                    String keys = line.equals(CTRL_C) ? line : line + "\r";
                    terminal.processInputBytes(keys.getBytes(StandardCharsets.UTF_8));
                }
            }
            terminal.processInputBytes(CTRL_D.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.display.HowFar;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ProgressLogTest {
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private long seconds;

    private TerminalView view(boolean terminal) {
        PrintStream out = new PrintStream(written, true, StandardCharsets.UTF_8);
        return new TerminalView(out, terminal, 60, () -> seconds * 1_000_000_000L);
    }

    private void at(long now, TerminalView view, double share, long left) {
        seconds = now;
        view.progress(new HowFar("hours of the year", share, Optional.of(Duration.ofSeconds(left))));
    }

    private String text() {
        return written.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
    }

    @Test
    void a_file_gets_a_plain_line_every_ten_seconds() {
        TerminalView view = view(false);
        at(0, view, 0.01, 100);
        at(9, view, 0.1, 80);
        at(11, view, 0.4, 25);
        at(20, view, 0.5, 20);
        at(21, view, 0.6, 15);
        view.progressEnded();
        assertEquals(
                "   hours of the year: 40 %, about 25 s left\n   hours of the year: 60 %, about 15 s left\n", text());
    }

    @Test
    void a_file_gets_nothing_of_quick_calculations_in_cell_after_cell() {
        TerminalView view = view(false);
        for (int cell = 0; cell < 5; cell++) {
            at(8 * cell, view, 0.1, 7);
            at(8 * cell + 7, view, 0.9, 1);
            view.progressEnded();
        }
        assertEquals("", text());
    }

    @Test
    void a_terminal_gets_one_line_that_is_drawn_anew_and_goes() {
        TerminalView view = view(true);
        at(0, view, 0.3, 30);
        at(1, view, 0.4, 25);
        view.progressEnded();
        assertTrue(text().contains("hours of the year: 40 %, about 25 s left [#####"), text());
        assertFalse(text().contains("\n"), text());
        assertTrue(text().endsWith("\r\u001b[K"), "the line is erased at the end");
    }

    @Test
    void a_terminal_cuts_the_line_at_its_margin_so_that_it_can_be_erased() {
        TerminalView view = view(true);
        at(0, view, 0.3, 30);
        assertTrue(text().startsWith("\u001b[?7lhours") && text().endsWith("]\u001b[?7h"), text());
        assertEquals(
                57, text().replaceAll("\u001b\\[\\?7[lh]", "").length(), "60 columns, less 3 for the ^C of a stop");
    }
}

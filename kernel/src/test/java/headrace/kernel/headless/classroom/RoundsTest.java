package headrace.kernel.headless.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.kernel.headless.TerminalView;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RoundsTest {
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private final TerminalView terminal =
            new TerminalView(new PrintStream(written, true, StandardCharsets.UTF_8), true, 80);
    private long seconds;

    private List<String> lines() {
        List<String> lines = new ArrayList<>(List.of(written.toString(StandardCharsets.UTF_8)
                .replaceAll("\u001b\\[\\?7[lh]", "")
                .split("\r\u001b\\[K")));
        lines.replaceAll(line -> line.replaceAll(" \\[.*", ""));
        return lines;
    }

    @Test
    void each_round_is_told_by_its_number_with_the_time_that_those_before_it_took() {
        Rounds rounds = new Rounds(terminal, "seed", 4, () -> seconds * 1_000_000_000L);
        rounds.begin(1);
        seconds = 5;
        rounds.begin(2);
        seconds = 10;
        rounds.begin(3);
        rounds.end();
        assertEquals(
                List.of("seed 1 of 4: 0 %", "seed 2 of 4: 25 %, about 15 s left", "seed 3 of 4: 50 %, about 10 s left"),
                lines());
    }

    @Test
    void of_a_single_round_nothing_is_told() {
        Rounds rounds = new Rounds(terminal, "notebook", 1);
        rounds.begin(1);
        rounds.end();
        assertEquals(0, written.size());
    }
}

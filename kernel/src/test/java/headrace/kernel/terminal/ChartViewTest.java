package headrace.kernel.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Line;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.LineDisciplineTerminal;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ChartViewTest {
    /** A ramp that falls in a straight line, so that its place in the picture can be told by hand. */
    private static final Chart RAMP = Chart.titled("A straight fall")
            .across(Axis.of("Flow", "m³/h"))
            .panel(Axis.of("Head", "m"), Line.through(new double[] {0, 100}, new double[] {20, 0}))
            .build();

    @Test
    void dots_and_letters_fit_the_terminal_and_show_title_axes_and_line() throws IOException {
        for (int columns : new int[] {64, 80, 100, 200}) {
            String text = drawn(columns, Charts.DOTS).replaceAll("\u001b\\[[0-9;]*m", "");
            List<String> lines = text.lines().toList();
            assertTrue(lines.stream().allMatch(line -> line.length() < columns), text);
            assertTrue(text.contains("A straight fall"), text);
            assertTrue(text.contains("Head in m"), text);
            assertTrue(text.contains("Flow in m³/h"), text);
            assertTrue(
                    text.codePoints().filter(c -> c > '\u2800' && c <= '\u28FF').count() > columns, text);
        }
    }

    /** In the column of a share of the axis across, the topmost strong dot stands that share down the panel. */
    @Test
    void a_line_stands_in_dots_where_it_belongs() throws IOException {
        List<String> lines = drawn(100, Charts.DOTS)
                .replaceAll("\u001b\\[[0-9;]*m", "")
                .lines()
                .toList();
        int zero = row(lines, "0");
        int twenty = row(lines, "20");
        int ten = row(lines, "10");
        assertEquals((zero + twenty) / 2.0, ten, 1, "the middle label stands in the middle");
        assertTrue(zero > twenty + 8, "the panel has a height");
    }

    @Test
    void a_narrow_terminal_gets_words() throws IOException {
        for (String words : List.of(drawn(50, Charts.DOTS), drawn(200, Charts.WORDS))) {
            assertEquals("[" + RAMP.altText() + "]", words.strip().replaceAll("\\s+", " "));
        }
        assertTrue(drawn(50, Charts.DOTS).lines().allMatch(line -> line.length() <= 50), "it fits");
    }

    /** A terminal has 256 colours: those that the picture uses most come back within what five bits tell apart. */
    @Test
    void a_sixel_picture_read_back_is_the_chart() throws IOException {
        String sixel = drawn(100, Charts.PICTURE);
        BufferedImage back = SixelPicture.read(sixel);
        BufferedImage chart = ImageIO.read(new ByteArrayInputStream(RAMP.toPng(800)));
        assertEquals(chart.getWidth(), back.getWidth());
        assertEquals(chart.getHeight(), back.getHeight());
        long alike = IntStream.range(0, chart.getHeight())
                .mapToLong(y -> IntStream.range(0, chart.getWidth())
                        .filter(x -> difference(chart.getRGB(x, y), back.getRGB(x, y)) <= 8 + 255 / 100)
                        .count())
                .sum();
        assertTrue(alike > 0.999 * chart.getWidth() * chart.getHeight(), alike + " alike");
        assertFalse(sixel.contains("\u001b[31m"));
    }

    private static int row(List<String> lines, String label) {
        return IntStream.range(0, lines.size())
                .filter(i -> lines.get(i).strip().matches(label + "[\\u2800-\\u28FF].*"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(label + " in " + String.join("\n", lines)));
    }

    /** Of the channels, the greatest difference. */
    private static int difference(int one, int other) {
        return IntStream.of(0, 8, 16)
                .map(shift -> Math.abs((one >> shift & 0xFF) - (other >> shift & 0xFF)))
                .max()
                .getAsInt();
    }

    private static String drawn(int columns, Charts charts) throws IOException {
        try (Terminal terminal = terminal(columns)) {
            return new ChartView(terminal, charts, true).drawn(RAMP);
        }
    }

    private static Terminal terminal(int columns) throws IOException {
        Terminal terminal = new LineDisciplineTerminal(
                "test", "xterm-256color", new ByteArrayOutputStream(), StandardCharsets.UTF_8);
        terminal.setSize(Size.of(columns, 40));
        return terminal;
    }
}

package headrace.kernel.terminal;

import headrace.chart.Chart;
import headrace.report.Block.ChartBlock;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.SixelGraphics;
import org.jline.terminal.impl.TerminalGraphics;
import org.jline.terminal.impl.TerminalGraphicsManager;
import org.jline.utils.AttributedString;

/**
 * Draws charts in a terminal: as a picture by the protocol that it understands, or in dots of Braille.
 *
 * <p>Of the picture protocols sixel is tested; those of kitty and iTerm2 are as the terminal library gives them,
 * untested.
 */
final class ChartView {
    /** A chart lays itself out for 400 to 1600 pixels. */
    private static final int LEAST_PIXELS = 400;

    private static final int PICTURE_PIXELS = 800;
    private static final int MOST_COLUMNS = 120;
    private static final int LEAST_COLUMNS = (int) Math.ceil(LEAST_PIXELS / DotSurface.ACROSS);

    private final Terminal terminal;
    private final Charts charts;
    private final boolean coloured;
    private Optional<TerminalGraphics> protocol;

    /**
     * Makes a view.
     *
     * @param terminal where it draws
     * @param charts how it draws
     * @param coloured whether dots and letters have colours; a picture has in any case
     */
    ChartView(Terminal terminal, Charts charts, boolean coloured) {
        this.terminal = terminal;
        this.charts = charts;
        this.coloured = coloured;
    }

    /** Returns what draws the chart when it is written to the terminal, with a line break at its end. */
    String drawn(Chart chart) {
        if (charts != Charts.WORDS) {
            Optional<TerminalGraphics> graphics = charts == Charts.DOTS ? Optional.empty() : protocol();
            if (graphics.isPresent()) {
                return picture(chart, graphics.get());
            }
            if (terminal.getSize().getColumns() >= LEAST_COLUMNS) {
                return dots(chart);
            }
        }
        return new ChartBlock(chart).toText(terminal.getSize().getColumns()) + "\n";
    }

    private String picture(Chart chart, TerminalGraphics graphics) {
        try {
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(chart.toPng(PICTURE_PIXELS)));
            return drawn(image, graphics) + "\n";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String drawn(BufferedImage image, TerminalGraphics graphics) throws IOException {
        return graphics.getProtocol() == TerminalGraphics.Protocol.SIXEL
                ? Sixel.of(image)
                : graphics.convertImage(image, new TerminalGraphics.ImageOptions());
    }

    private String dots(Chart chart) {
        int columns = Math.min(MOST_COLUMNS, terminal.getSize().getColumns() - 1);
        int pixels = (int) Math.max(LEAST_PIXELS, Math.floor(columns * DotSurface.ACROSS));
        return chart.drawn(pixels, height -> new DotSurface(columns, height, coloured)).lines().stream()
                .map(this::written)
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private String written(AttributedString line) {
        return line.toAnsi(terminal);
    }

    /** Asks the terminal once: the answer takes a while, and does not change. */
    private Optional<TerminalGraphics> protocol() {
        if (protocol == null) {
            protocol = charts == Charts.PICTURE
                    ? Optional.of(
                            TerminalGraphicsManager.getBestProtocol(terminal).orElseGet(SixelGraphics::new))
                    : TerminalGraphicsManager.getBestProtocol(terminal);
        }
        return protocol;
    }
}

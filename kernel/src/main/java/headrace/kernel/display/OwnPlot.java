package headrace.kernel.display;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Map;
import javax.imageio.ImageIO;
import org.knowm.xchart.internal.chartpart.Chart;

/**
 * Shows a plot that a script has drawn of its own with XChart, for what no result of Headrace draws.
 *
 * <p>XChart sets its lettering in the fonts of the machine. On a machine without any, the plot is not drawn, and its
 * text says why.
 */
final class OwnPlot {
    private static final String PACKAGE = "org.knowm.xchart.";

    private OwnPlot() {}

    /** Returns whether a value is such a plot, without loading XChart for one that is not. */
    static boolean is(Object value) {
        return value != null && value.getClass().getName().startsWith(PACKAGE) && value instanceof Chart<?, ?>;
    }

    static MimeBundle of(Object value) {
        Chart<?, ?> plot = (Chart<?, ?>) value;
        String title = plot.getTitle().isBlank() ? "Plot" : plot.getTitle();
        String text = title + ": a plot of " + plot.getSeriesMap().size() + " series";
        try {
            return new MimeBundle(Map.of("text/plain", text, "image/png", png(plot)));
        } catch (RuntimeException | LinkageError | InternalError e) {
            return MimeBundle.plain(text + ". It could not be drawn here: XChart needs the machine's fonts");
        }
    }

    private static String png(Chart<?, ?> plot) {
        BufferedImage image = new BufferedImage(plot.getWidth(), plot.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        plot.paint(graphics, plot.getWidth(), plot.getHeight());
        graphics.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new AssertionError("Memory does not fail to be written to", e);
        }
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }
}

package headrace.kernel.display;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.RenderedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.knowm.xchart.internal.chartpart.Chart;

/**
 * Shows what a script has drawn of its own: a plot with XChart, for what no result of Headrace draws, or an image.
 *
 * <p>XChart sets its lettering in the fonts of the machine. On a machine without any, the plot is not drawn, and its
 * text says why.
 *
 * @param text what it is, in words
 * @param png the picture; empty if it could not be drawn
 */
record OwnPicture(String text, Optional<byte[]> png) {
    private static final String PACKAGE = "org.knowm.xchart.";

    /** Returns a picture of the script's own, without loading XChart for what is none; empty if it is none. */
    static Optional<OwnPicture> of(Object value) {
        if (value instanceof RenderedImage image) {
            return Optional.of(new OwnPicture(
                    "Image of " + image.getWidth() + " by " + image.getHeight() + " pixels", Optional.of(png(image))));
        }
        return value != null && value.getClass().getName().startsWith(PACKAGE) && value instanceof Chart<?, ?> plot
                ? Optional.of(plot(plot))
                : Optional.empty();
    }

    /** Returns it in the forms that a front end draws. */
    MimeBundle bundle() {
        return png.map(bytes -> new MimeBundle(Map.of(
                        "text/plain", text, "image/png", Base64.getEncoder().encodeToString(bytes))))
                .orElseGet(() -> MimeBundle.plain(text));
    }

    private static OwnPicture plot(Chart<?, ?> plot) {
        String title = plot.getTitle().isBlank() ? "Plot" : plot.getTitle();
        String text = title + ": a plot of " + plot.getSeriesMap().size() + " series";
        try {
            BufferedImage image = new BufferedImage(plot.getWidth(), plot.getHeight(), BufferedImage.TYPE_INT_RGB);
            Graphics2D graphics = image.createGraphics();
            plot.paint(graphics, plot.getWidth(), plot.getHeight());
            graphics.dispose();
            return new OwnPicture(text, Optional.of(png(image)));
        } catch (RuntimeException | LinkageError | InternalError e) {
            return new OwnPicture(
                    text + ". It could not be drawn here: XChart needs the machine's fonts", Optional.empty());
        }
    }

    private static byte[] png(RenderedImage image) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new AssertionError("Memory does not fail to be written to", e);
        }
        return bytes.toByteArray();
    }
}

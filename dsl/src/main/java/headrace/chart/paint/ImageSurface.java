package headrace.chart.paint;

import headrace.work.Work;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.event.IIOWriteProgressListener;
import javax.imageio.stream.ImageOutputStream;

/** A surface that becomes a PNG image on white ground. */
public final class ImageSurface implements Surface {
    private final BufferedImage image;
    private final Graphics2D graphics;

    /** Creates a white surface of so many pixels, each of {@code scale} dots. */
    public ImageSurface(double width, double height, double scale) {
        int across = (int) Math.round(width * scale);
        int down = (int) Math.round(height * scale);
        image = new BufferedImage(across, down, BufferedImage.TYPE_INT_RGB);
        graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, across, down);
        graphics.scale(scale, scale);
    }

    @Override
    public void fill(Shape shape, int rgb, double opacity) {
        Work.poll();
        graphics.setColor(new Color(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF, (int) Math.round(opacity * 255)));
        graphics.fill(shape);
    }

    @Override
    public void stroke(Shape shape, Pen pen) {
        Work.poll();
        float[] dashes = new float[pen.dashes().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] = pen.dashes().get(i).floatValue();
        }
        graphics.setColor(new Color(pen.rgb()));
        graphics.setStroke(new BasicStroke(
                (float) pen.width(),
                BasicStroke.CAP_BUTT,
                BasicStroke.JOIN_ROUND,
                1,
                dashes.length == 0 ? null : dashes,
                0));
        graphics.draw(shape);
    }

    @Override
    public void letter(Lettering lettering) {
        fill(lettering.outline(), lettering.rgb(), 1);
    }

    /** Returns the image as a PNG file. */
    public byte[] toPng() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        writer.addIIOWriteProgressListener(new Polling());
        try (ImageOutputStream file = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(file);
            writer.write(image);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    /** Lets the user stop the packing of a large image, row by row. */
    private static final class Polling implements IIOWriteProgressListener {
        @Override
        public void imageProgress(ImageWriter source, float percent) {
            Work.poll();
        }

        @Override
        public void imageStarted(ImageWriter source, int index) {}

        @Override
        public void imageComplete(ImageWriter source) {}

        @Override
        public void thumbnailStarted(ImageWriter source, int index, int thumbnail) {}

        @Override
        public void thumbnailProgress(ImageWriter source, float percent) {}

        @Override
        public void thumbnailComplete(ImageWriter source) {}

        @Override
        public void writeAborted(ImageWriter source) {}
    }
}

package headrace.kernel.display;

import headrace.chart.Chart;
import headrace.report.whatif.Frame;
import headrace.report.whatif.FramePart;
import java.util.List;
import java.util.Optional;

/**
 * A part of a what-if's frame, drawn.
 *
 * @param name what it is called among the others; empty where it stands alone
 * @param svg its chart
 * @param png its picture, if the script has drawn it
 * @param alt the picture in words
 * @param text what is said beside it
 */
public record Drawn(String name, Optional<String> svg, Optional<byte[]> png, String alt, String text) {
    /** A chart lays itself out for 400 pixels and more. */
    private static final int LEAST_PIXELS = 400;

    private static final int GAP_PIXELS = 16;

    private static final int PIXELS_A_COLUMN = 8;

    /** Draws all parts of a frame. */
    public static List<Drawn> of(Frame frame) {
        int pixels = pixels(frame);
        return frame.parts().stream().map(part -> of(part, pixels)).toList();
    }

    /** Returns how wide each chart of a frame is: those in a row share the width of a notebook's text. */
    public static int pixels(Frame frame) {
        int across =
                frame.arrangement() == Frame.Arrangement.ROW ? frame.parts().size() : 1;
        return Math.max(LEAST_PIXELS, (Display.CHART_PIXELS - (across - 1) * GAP_PIXELS) / across);
    }

    /** Draws one part, its chart of this width. */
    public static Drawn of(FramePart part, int pixels) {
        Optional<OwnPicture> own = OwnPicture.of(part.value());
        if (own.isPresent()) {
            String text = own.get().text();
            return new Drawn(part.name(), Optional.empty(), own.get().png(), text, text);
        }
        Optional<Chart> chart = part.chart();
        return new Drawn(
                part.name(),
                chart.map(drawing -> drawing.toSvg(pixels)),
                Optional.empty(),
                chart.map(Chart::altText).orElse(""),
                part.text(pixels / PIXELS_A_COLUMN));
    }
}

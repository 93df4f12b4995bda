package headrace.kernel.display;

import headrace.report.whatif.Control;
import headrace.report.whatif.Frame;
import headrace.report.whatif.WhatIf;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import java.util.zip.GZIPOutputStream;

/**
 * So many frames of a what-if, packed, as fit a page.
 *
 * @param whatIf with the positions that are left
 * @param frames the markup of each frame, hidden
 */
record FramesAhead(WhatIf whatIf, List<String> frames) {
    /** So many characters of packed frames at most: a page holds several of these and stays below 2 MB. */
    private static final int MOST_PACKED = 900_000;

    /** Takes as many frames as fit if all are like the first one, and half as many until they really fit. */
    static FramesAhead of(WhatIf whole, Frame begin) {
        int alike = MOST_PACKED / packed(begin).length();
        int most = Math.min(WhatIf.MOST_FRAMES, Math.max(fewest(whole), alike));
        WhatIf fewer = whole.thinned(most);
        List<String> frames = packed(fewer);
        while (frames.stream().mapToInt(String::length).sum() > MOST_PACKED && frames.size() > 2) {
            most = frames.size() / 2;
            WhatIf next = fewer.thinned(Math.max(2, most));
            if (next.controls().equals(fewer.controls())) {
                break;
            }
            fewer = next;
            frames = packed(fewer);
        }
        return new FramesAhead(fewer, frames);
    }

    private static List<String> packed(WhatIf whatIf) {
        List<String> frames = new ArrayList<>();
        for (Frame frame : whatIf.frames()) {
            frames.add(packed(frame));
        }
        return frames;
    }

    /** Returns how many frames are left when every slider has its two ends only. */
    private static int fewest(WhatIf whole) {
        return whole.controls().stream()
                .mapToInt(control -> control.form() == Control.Form.SLIDER
                        ? 2
                        : control.positions().size())
                .reduce(1, Math::multiplyExact);
    }

    private static String packed(Frame frame) {
        StringBuilder out = new StringBuilder("<div hidden=\"hidden\" data-at=\"");
        out.append(frame.at().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        out.append("\" data-as=\"").append(WhatIfHtml.as(frame)).append("\">");
        for (Drawn part : Drawn.of(frame)) {
            out.append("<pre data-name=\"").append(Html.escape(part.name()));
            part.svg().ifPresent(svg -> out.append("\" data-picture=\"").append(base64(zipped(svg))));
            part.png().ifPresent(png -> out.append("\" data-bitmap=\"").append(base64(png)));
            out.append("\" data-alt=\"").append(Html.escape(part.alt())).append("\">");
            out.append(Html.escape(part.text())).append("</pre>");
        }
        return out.append("</div>\n").toString();
    }

    private static String base64(byte[] bytes) {
        return Base64.getEncoder().encodeToString(bytes);
    }

    private static byte[] zipped(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(bytes)) {
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}

package headrace.kernel.display;

import headrace.report.whatif.Control;
import headrace.report.whatif.Frame;
import headrace.report.whatif.WhatIf;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import java.util.zip.GZIPOutputStream;

/**
 * A what-if as a piece of a page that moves by itself: its controls, the frame at which it begins, and all its frames
 * computed ahead, the pictures packed.
 *
 * <p>Without its script it shows where it begins.
 */
public final class WhatIfHtml {
    /** What the piece is marked with. */
    public static final String MARK = "headrace-whatif";

    /** So many characters of packed pictures at most: a page holds several of these and stays below 2 MB. */
    private static final int MOST_PACKED = 900_000;

    private static final String STYLE = """
            <style>
            .headrace-whatif{font-family:system-ui,sans-serif;line-height:1.4;max-width:64rem}
            .headrace-whatif .controls{display:grid;grid-template-columns:max-content minmax(10rem,24rem) 1fr;\
            gap:.3em 1em;align-items:center;margin:.6em 0}
            .headrace-whatif img{max-width:100%;height:auto;background:#fff}
            .headrace-whatif pre{overflow-x:auto;font-size:.88em}
            .headrace-whatif figure{margin:.6em 0}
            .headrace-whatif .remark{opacity:.75;font-size:.88em}
            @media print{.headrace-whatif .controls{display:none}}
            </style>
            """;

    private final StringBuilder out = new StringBuilder();

    private WhatIfHtml() {}

    /** Returns the piece with its script, for a notebook; well formed as XML too, in which the script is one text. */
    static String of(WhatIf whatIf, Frame begin) {
        return piece(whatIf, begin) + "<script>//<![CDATA[\n" + script() + "//]]></script>";
    }

    /** Returns the script that moves every such piece on a page; the same for all of them. */
    public static String script() {
        try (InputStream in = WhatIfHtml.class.getResourceAsStream("whatif.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String piece(WhatIf whole, Frame begin) {
        Packed packed = Packed.of(whole, begin);
        WhatIfHtml html = new WhatIfHtml();
        html.out.append("<div class=\"").append(MARK).append("\">\n").append(STYLE);
        html.out.append("<div class=\"controls\">\n");
        packed.whatIf.controls().forEach(html::control);
        html.out.append("</div>\n");
        html.begin(begin);
        packed.frames.forEach(html.out::append);
        if (packed.whatIf != whole) {
            html.out
                    .append("<p class=\"remark\">Computed ahead at ")
                    .append(packed.frames.size())
                    .append(" positions; a running session has them all.</p>\n");
        }
        return html.out.append("</div>").toString();
    }

    private void control(Control control) {
        String name = Html.escape(control.name());
        List<String> labels = control.labels();
        out.append("<span>").append(name).append("</span>");
        switch (control.form()) {
            case SLIDER ->
                out.append("<input type=\"range\" min=\"0\" step=\"1\" max=\"")
                        .append(labels.size() - 1)
                        .append("\" value=\"")
                        .append(control.start())
                        .append("\" aria-label=\"")
                        .append(name)
                        .append("\" data-labels=\"")
                        .append(Html.escape(String.join("|", labels)))
                        .append("\"/>");
            case CHOICE -> {
                out.append("<select aria-label=\"").append(name).append("\">");
                labels.forEach(label ->
                        out.append("<option>").append(Html.escape(label)).append("</option>"));
                out.append("</select>");
            }
            case SWITCH ->
                out.append("<input type=\"checkbox\" aria-label=\"")
                        .append(name)
                        .append(control.start() == 1 ? "\" checked=\"checked\"/>" : "\"/>");
        }
        out.append("<output>")
                .append(control.form() == Control.Form.SLIDER ? Html.escape(labels.get(control.start())) : "")
                .append("</output>\n");
    }

    private void begin(Frame start) {
        start.chart()
                .ifPresent(chart -> out.append("<figure><img alt=\"")
                        .append(Html.escape(chart.altText()))
                        .append("\" src=\"data:image/svg+xml;base64,")
                        .append(base64(Display.svg(chart).getBytes(StandardCharsets.UTF_8)))
                        .append("\"/></figure>\n"));
        out.append("<pre class=\"said\">").append(Html.escape(start.text())).append("</pre>\n");
    }

    private static String base64(byte[] bytes) {
        return Base64.getEncoder().encodeToString(bytes);
    }

    /** So many frames, packed, as fit. */
    private record Packed(WhatIf whatIf, List<String> frames) {
        /** Takes as many frames as fit if all are like the first one, and half as many until they really fit. */
        static Packed of(WhatIf whole, Frame begin) {
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
            return new Packed(fewer.controls().equals(whole.controls()) ? whole : fewer, frames);
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
            String at = frame.at().stream().map(String::valueOf).collect(Collectors.joining(" "));
            return "<pre hidden=\"hidden\" data-at=\"" + at + "\" data-picture=\""
                    + frame.chart()
                            .map(chart -> base64(zipped(Display.svg(chart))))
                            .orElse("")
                    + "\" data-alt=\""
                    + frame.chart().map(chart -> Html.escape(chart.altText())).orElse("")
                    + "\">" + Html.escape(frame.text()) + "</pre>\n";
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
}

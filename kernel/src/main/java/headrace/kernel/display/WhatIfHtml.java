package headrace.kernel.display;

import headrace.report.whatif.Control;
import headrace.report.whatif.Frame;
import headrace.report.whatif.Preset;
import headrace.report.whatif.WhatIf;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A what-if as a piece of a page that moves by itself: its controls, the frame at which it begins, and all its frames
 * computed ahead, the pictures packed.
 *
 * <p>Without its script it shows where it begins, all parts one below the other.
 */
public final class WhatIfHtml {
    /** What the piece is marked with. */
    public static final String MARK = "headrace-whatif";

    private static final String STAYS = "-";

    private final StringBuilder out = new StringBuilder();

    private WhatIfHtml() {}

    /** Returns the piece with its script, for a notebook; well formed as XML too, in which the script is one text. */
    static String of(WhatIf whatIf, Frame begin) {
        return piece(whatIf, begin) + "<script>//<![CDATA[\n" + script() + "//]]></script>";
    }

    /** Returns the script that moves every such piece on a page; the same for all of them. */
    public static String script() {
        return resource("whatif.js");
    }

    /** Returns the style of every such piece; its colours are those of the page around it. */
    public static String style() {
        return resource("whatif.css");
    }

    private static String resource(String name) {
        try (InputStream in = WhatIfHtml.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String piece(WhatIf whole, Frame begin) {
        FramesAhead ahead = FramesAhead.of(whole);
        WhatIfHtml html = new WhatIfHtml();
        html.out.append("<div class=\"").append(MARK).append("\">\n");
        html.out.append("<style>\n").append(style()).append("</style>\n");
        html.controls(ahead.whatIf());
        html.begin(begin);
        html.out
                .append("<p hidden=\"hidden\" data-lines=\"")
                .append(ahead.lines())
                .append("\"></p>\n");
        ahead.frames().forEach(html.out::append);
        if (!ahead.whatIf().controls().equals(whole.controls())) {
            html.out
                    .append("<p class=\"remark\">Computed ahead at ")
                    .append(ahead.frames().size())
                    .append(" positions; a running session has them all.</p>\n");
        }
        return html.out.append("</div>").toString();
    }

    private void controls(WhatIf whatIf) {
        out.append("<div class=\"controls\">\n");
        whatIf.controls().forEach(this::control);
        out.append("</div>\n<div class=\"presets\">\n");
        preset("Back to the start", whatIf.start());
        for (Preset preset : whatIf.presets()) {
            preset(preset.label(), preset.at());
        }
        out.append("</div>\n");
    }

    private void preset(String name, List<Integer> at) {
        out.append("<button type=\"button\" data-at=\"")
                .append(at.stream()
                        .map(each -> each == Preset.STAYS ? STAYS : each.toString())
                        .collect(Collectors.joining(" ")))
                .append("\">")
                .append(Html.escape(name))
                .append("</button>\n");
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

    private void begin(Frame frame) {
        out.append("<div class=\"drawn\" data-as=\"").append(as(frame)).append("\">\n");
        Drawn.of(frame).forEach(this::part);
        out.append("</div>\n");
    }

    private void part(Drawn part) {
        out.append("<section class=\"part\">");
        if (!part.name().isEmpty()) {
            out.append("<p class=\"name\">").append(Html.escape(part.name())).append("</p>");
        }
        part.svg().ifPresent(svg -> figure(Picture.svg(svg, part.alt())));
        part.png().ifPresent(png -> figure(Picture.png(png, part.alt())));
        out.append("<pre class=\"said\">").append(Html.escape(part.text())).append("</pre></section>\n");
    }

    private void figure(String image) {
        out.append("<figure>").append(image).append("</figure>");
    }

    /** Returns how the parts of a frame stand, as the script knows it. */
    static String as(Frame frame) {
        return frame.arrangement().name().toLowerCase(Locale.ROOT);
    }
}

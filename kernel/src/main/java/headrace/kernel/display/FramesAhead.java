package headrace.kernel.display;

import headrace.report.whatif.Frame;
import headrace.report.whatif.WhatIf;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;

/**
 * So many frames of a what-if, packed, as fit a page.
 *
 * @param whatIf with the positions that are left
 * @param lines the lines of all drawings and texts, packed
 * @param frames the markup of each frame, hidden, in which each drawing and text is the numbers of its lines
 */
record FramesAhead(WhatIf whatIf, String lines, List<String> frames) {
    /** So many characters at most: a page holds several of these and stays below 2 MB. */
    private static final int MOST_PACKED = 600_000;

    /** Takes all frames, or half as many until they fit. */
    static FramesAhead of(WhatIf whole) {
        FramesAhead ahead = all(whole.thinned(WhatIf.MOST_FRAMES));
        while (ahead.size() > MOST_PACKED && ahead.frames.size() > 2) {
            FramesAhead fewer = all(ahead.whatIf.thinned(Math.max(2, ahead.frames.size() / 2)));
            if (fewer.frames.size() == ahead.frames.size()) {
                break;
            }
            ahead = fewer;
        }
        return ahead;
    }

    private int size() {
        return lines.length() + frames.stream().mapToInt(String::length).sum();
    }

    private static FramesAhead all(WhatIf whatIf) {
        SharedLines lines = new SharedLines();
        List<String> frames = new ArrayList<>();
        for (Frame frame : whatIf.frames()) {
            frames.add(markup(frame, lines));
        }
        return new FramesAhead(whatIf, lines.packed(), frames);
    }

    private static String markup(Frame frame, SharedLines lines) {
        StringBuilder out = new StringBuilder("<p hidden=\"hidden\" data-at=\"");
        out.append(frame.at().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        out.append("\" data-as=\"").append(WhatIfHtml.as(frame)).append("\">");
        for (Drawn part : Drawn.of(frame)) {
            out.append("<i data-name=\"").append(Html.escape(part.name()));
            part.svg().ifPresent(svg -> out.append("\" data-picture=\"").append(lines.keep(svg)));
            part.png()
                    .ifPresent(png -> out.append("\" data-bitmap=\"")
                            .append(lines.keep(Base64.getEncoder().encodeToString(png))));
            out.append("\" data-alt=\"").append(lines.keep(part.alt()));
            out.append("\" data-said=\"").append(lines.keep(part.text())).append("\"></i>");
        }
        return out.append("</p>\n").toString();
    }
}

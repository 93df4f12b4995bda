package headrace.kernel.display;

import headrace.chart.Chart;
import headrace.report.Block.ChartBlock;
import headrace.report.Shown;
import headrace.report.whatif.Frame;
import headrace.report.whatif.FramePart;
import headrace.report.whatif.WhatIf;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Turns a value into what is shown of it.
 *
 * <p>A result of a calculation shows its verdict, tables, charts and notes; a list or map of such results shows each in
 * turn; a picture that the script drew shows itself; anything else shows its text.
 */
public final class Display {
    /** As wide as the text of a notebook. */
    static final int CHART_PIXELS = 800;

    private Display() {}

    /** Returns what is shown of a value. Never throws for what the value's own {@code toString} does. */
    public static MimeBundle of(Object value) {
        if (value instanceof MimeBundle bundle) {
            return bundle;
        }
        if (value instanceof Chart chart) {
            return chart(chart);
        }
        if (value instanceof WhatIf) {
            return of(begun(value));
        }
        if (value instanceof Moving moving) {
            return whatIf(moving);
        }
        Optional<OwnPicture> own = OwnPicture.of(value);
        if (own.isPresent()) {
            return own.get().bundle();
        }
        List<Shown> shown = Gathered.of(value);
        return shown.isEmpty() ? MimeBundle.plain(PlainValue.text(value)) : bundle(shown);
    }

    /**
     * Returns a what-if with what it shows where it begins, so that what is shown of that computes only what nobody
     * looks at yet; any other value as it is.
     */
    public static Object begun(Object value) {
        return value instanceof WhatIf whatIf ? new Moving(whatIf, whatIf.at(whatIf.start())) : value;
    }

    private static MimeBundle chart(Chart chart) {
        Shown alone = new Shown(chart.title(), List.of(), List.of(new ChartBlock(chart)));
        return new MimeBundle(Map.of("text/plain", chart.altText(), "image/svg+xml", svg(chart)), List.of(alone));
    }

    private static MimeBundle whatIf(Moving moving) {
        return beginning(moving).with("text/html", WhatIfHtml.of(moving.whatIf(), moving.begin()));
    }

    /** Returns a what-if as it begins, for a door in which it does not move by itself. */
    public static MimeBundle beginning(Moving moving) {
        WhatIf whatIf = moving.whatIf();
        Frame begin = moving.begin();
        List<Drawn> drawn = Drawn.of(begin);
        List<Shown> shown = new ArrayList<>();
        shown.add(new Shown(
                whatIf.toString(), List.of("Shown where it begins; it moves in a notebook and on a page."), List.of()));
        for (int i = 0; i < drawn.size(); i++) {
            FramePart part = begin.parts().get(i);
            Shown each =
                    drawn.get(i).png().isPresent() ? Shown.line(drawn.get(i).text()) : part.shown();
            shown.add(Gathered.titled(part.name(), each));
        }
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put("text/plain", text(shown));
        drawn.stream()
                .flatMap(part -> part.svg().stream())
                .findFirst()
                .ifPresent(svg -> forms.put("image/svg+xml", svg));
        return new MimeBundle(forms, shown, Optional.of(moving));
    }

    /** Returns a chart as a picture as wide as the text of a notebook. */
    public static String svg(Chart chart) {
        return chart.toSvg(CHART_PIXELS);
    }

    private static String text(List<Shown> shown) {
        return String.join("\n\n", shown.stream().map(Shown::toText).toList());
    }

    private static MimeBundle bundle(List<Shown> shown) {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put("text/plain", text(shown));
        forms.put("text/html", ShownHtml.of(shown));
        shown.stream()
                .flatMap(each -> each.blocks().stream())
                .filter(ChartBlock.class::isInstance)
                .findFirst()
                .ifPresent(block -> forms.put("image/svg+xml", svg(((ChartBlock) block).chart())));
        return new MimeBundle(forms, shown);
    }
}

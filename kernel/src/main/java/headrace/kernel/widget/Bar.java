package headrace.kernel.widget;

import headrace.kernel.display.HowFar;
import java.util.List;
import java.util.Map;

/** How far a slow calculation is: a bar, and words beside it. It keeps its place while there is nothing to show. */
final class Bar {
    private static final String SHOWN = "visible";
    private static final String HIDDEN = "hidden";

    private final Widget layout = new Widget(Kind.LAYOUT, Map.of("width", "8rem", "visibility", HIDDEN));
    private final Widget bar = new Widget(Kind.PROGRESS, Map.of("value", 0.0, "max", 1.0, "layout", layout));
    private final Widget words = new Widget(Kind.LABEL, Map.of("value", ""));

    /** Returns its places, from left to right. */
    List<Widget> widgets() {
        return List.of(bar, words);
    }

    /** Shows how far the calculation is. */
    void show(HowFar far) {
        bar.change("value", far.share());
        words.change("value", far.text());
        layout.change("visibility", SHOWN);
    }

    /** Shows nothing any more. */
    void clear() {
        layout.change("visibility", HIDDEN);
        words.change("value", "");
    }
}

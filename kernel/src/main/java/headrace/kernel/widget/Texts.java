package headrace.kernel.widget;

import headrace.kernel.display.Html;
import java.util.Map;

/** Markup in a widget, and text as markup. */
final class Texts {
    private Texts() {}

    /** Returns a place for markup. */
    static Widget html(String value) {
        return new Widget(Kind.HTML, Map.of("value", value, "layout", new Widget(Kind.LAYOUT, Map.of())));
    }

    /** Returns text as it is said, line by line. */
    static String said(String text) {
        return "<pre style=\"overflow-x:auto;font-size:.88em;line-height:1.4;margin:.4em 0\">" + Html.escape(text)
                + "</pre>";
    }
}

package headrace.kernel.widget;

import headrace.kernel.display.Drawn;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/** The place of one part: its picture, and what is said beside it. */
final class Place {
    private static final String STYLE = "<style>.headrace-drawn svg{max-width:100%;height:auto;display:block}</style>";

    private static final String WAITS = "Drawn when this tab is chosen while the kernel runs.";

    private static final AtomicInteger PLACES = new AtomicInteger();

    private final String own = "d" + PLACES.incrementAndGet();
    private final Widget said = Texts.html("");
    private final Widget root;
    private Widget picture;
    private boolean bitmap;

    /** Makes the place of a part that has a share of a row, or one that stands alone. */
    Place(Drawn part, boolean inRow) {
        bitmap = part.png().isPresent();
        picture = empty(bitmap);
        root = new Widget(
                Kind.COLUMN,
                Map.of("children", List.of(picture, said), "layout", inRow ? share() : Controls.wide("100%")));
        show(part);
    }

    /** Returns the widget that holds the others. */
    Widget root() {
        return root;
    }

    /** Draws a part, in the picture that is there if that can hold it. */
    void show(Drawn part) {
        hold(part.png().isPresent());
        if (bitmap) {
            part.png().ifPresent(bytes -> picture.change("value", bytes));
        } else {
            picture.changeAtOnce("value", part.svg().map(this::drawn).orElse(""));
        }
        said.change("value", Texts.said(part.text()));
    }

    /** Says that nothing is drawn here for now, in place of what held at other positions. */
    void waits() {
        hold(false);
        picture.change("value", "");
        said.change("value", Texts.said(WAITS));
    }

    /** Puts a picture here that can hold a bitmap, or one that can hold a drawing. */
    private void hold(boolean aBitmap) {
        if (aBitmap != bitmap) {
            Widget before = picture;
            bitmap = aBitmap;
            picture = empty(bitmap);
            root.change("children", List.of(picture, said));
            before.close();
        }
    }

    private static Widget empty(boolean bitmap) {
        return bitmap ? new Widget(Kind.IMAGE, Map.of("format", "png", "layout", most())) : Texts.html("");
    }

    /**
     * Returns a drawing for a page that holds others. Letters have the same names in every drawing; while they have
     * them on one page too, a browser goes through all drawings whenever one changes.
     */
    private String drawn(String svg) {
        String apart =
                svg.replace("<path id=\"", "<path id=\"" + own).replace("xlink:href=\"#", "xlink:href=\"#" + own);
        return "<div class=\"headrace-drawn\">" + STYLE + apart + "</div>";
    }

    private static Widget most() {
        return new Widget(Kind.LAYOUT, Map.of("max_width", "100%", "align_self", "flex-start"));
    }

    private static Widget share() {
        return new Widget(Kind.LAYOUT, Map.of("flex", "1 1 24rem", "min_width", "0"));
    }
}

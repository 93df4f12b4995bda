package headrace.kernel.widget;

import headrace.kernel.display.Drawn;
import headrace.kernel.message.Comm;
import headrace.report.whatif.Frame;
import headrace.report.whatif.FramePart;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The parts of a frame in their places: alone, in a row, or behind tabs. A tab that nobody looks at is drawn when it is
 * chosen; until then it says so, since a notebook may be saved and read as it stands.
 */
final class Parts {
    private final List<Place> places = new ArrayList<>();
    private final Widget root;
    private Frame shown;
    private int chosen;

    private Parts(Frame frame) {
        shown = frame;
        for (int i = 0; i < frame.parts().size(); i++) {
            places.add(new Place(drawn(frame, i), frame.arrangement() == Frame.Arrangement.ROW));
        }
        List<Widget> roots = places.stream().map(Place::root).toList();
        root = switch (frame.arrangement()) {
            case ROW -> new Widget(Kind.ROW, Map.of("children", roots, "layout", row()));
            case TABS ->
                new Widget(
                                Kind.TABS,
                                Map.of(
                                        "children", roots,
                                        "titles",
                                                frame.parts().stream()
                                                        .map(FramePart::name)
                                                        .toList(),
                                        "selected_index", chosen))
                        .moves(new Chooses());
            case ALONE, REFUSED -> roots.get(0);
        };
    }

    static Parts of(Frame frame) {
        return new Parts(frame);
    }

    /** Returns the widget that holds all parts. */
    Widget root() {
        return root;
    }

    /** Draws a frame in the places of the last one; returns false, and draws nothing, if it does not fit them. */
    boolean show(Frame frame) {
        if (!frame.isLike(shown)) {
            return false;
        }
        List<Integer> seen =
                IntStream.range(0, places.size()).filter(this::isSeen).boxed().toList();
        // all are drawn before the first is shown: a drawing that is interrupted shows nothing
        List<Drawn> drawn = seen.stream().map(i -> drawn(frame, i)).toList();
        shown = frame;
        for (int i = 0; i < seen.size(); i++) {
            places.get(seen.get(i)).show(drawn.get(i));
        }
        IntStream.range(0, places.size())
                .filter(i -> !isSeen(i))
                .forEach(i -> places.get(i).waits());
        return true;
    }

    private boolean isSeen(int place) {
        return shown.arrangement() != Frame.Arrangement.TABS || place == chosen;
    }

    private static Drawn drawn(Frame frame, int part) {
        return Drawn.of(frame.parts().get(part), Drawn.pixels(frame));
    }

    private static Widget row() {
        return new Widget(Kind.LAYOUT, Map.of("width", "100%", "flex_flow", "row wrap"));
    }

    /** What a front end does to the tabs. */
    private final class Chooses implements Widget.Moved {
        @Override
        public void notices(Comm.Data message) {
            // whichever tab is chosen last is drawn
        }

        @Override
        public boolean allows(Map<?, ?> change) {
            if (change.get("selected_index") instanceof Long index && index >= 0 && index < places.size()) {
                chosen = index.intValue();
                return true;
            }
            return false;
        }

        @Override
        public void hears(Comm.Data message) {
            places.get(chosen).show(drawn(shown, chosen));
        }
    }
}

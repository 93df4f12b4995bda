package headrace.kernel.widget;

import headrace.kernel.display.Moving;
import headrace.kernel.message.Comm;
import headrace.kernel.session.Session;
import headrace.report.whatif.Control;
import headrace.report.whatif.Preset;
import headrace.report.whatif.WhatIf;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Supplier;

/**
 * A what-if in a front end: its controls, and what is drawn at their positions.
 *
 * <p>A position is drawn in the turn of the message that brought it, so that a front end which waits for the end of
 * that turn brings the next one when it can be drawn. A position with a newer one behind it is passed over; the newest
 * is always drawn. All of it happens in the turns of cells, but for noticing what arrives.
 */
final class LiveWhatIf {
    private final WhatIf whatIf;
    private final Drawing drawing;
    private final List<Widget> controls = new ArrayList<>();
    private final Widget root;
    private List<Integer> positions;
    private List<Integer> drawn;
    private volatile Comm.Data newest;

    /**
     * Makes the widgets of a what-if, as it begins.
     *
     * @param session draws it anew
     */
    LiveWhatIf(Moving moving, Supplier<Session> session) {
        whatIf = moving.whatIf();
        drawing = new Drawing(moving.begin(), session);
        positions = whatIf.start();
        drawn = positions;
        String width = Controls.widthOfNames(whatIf.controls());
        for (int i = 0; i < positions.size(); i++) {
            Widget control =
                    Controls.widget(whatIf.controls().get(i), moving.labels().get(i), width);
            controls.add(control.moves(new Moves(i)));
        }
        List<Widget> parts = new ArrayList<>(controls);
        parts.add(buttons(width));
        parts.addAll(drawing.widgets());
        root = new Widget(Kind.COLUMN, Map.of("children", parts, "layout", Controls.wide("64rem")));
    }

    /** Returns the widget that holds all others. */
    Widget root() {
        return root;
    }

    /** Returns the row under the controls: a button for each preset, and how far a slow calculation is. */
    private Widget buttons(String indent) {
        List<Widget> row = new ArrayList<>();
        row.add(Controls.button("Back to the start").presses(() -> put(whatIf.start())));
        for (Preset preset : whatIf.presets()) {
            row.add(Controls.button(preset.label()).presses(() -> put(preset.from(positions))));
        }
        row.addAll(drawing.progress().widgets());
        Widget layout = new Widget(Kind.LAYOUT, Map.of("margin", ".3em 0 .6em " + indent, "flex_flow", "row wrap"));
        return new Widget(Kind.ROW, Map.of("children", row, "layout", layout));
    }

    private void put(List<Integer> there) {
        positions = there;
        for (int i = 0; i < controls.size(); i++) {
            Controls.put(whatIf.controls().get(i), controls.get(i), there.get(i));
        }
        drawNewest();
    }

    private void drawNewest() {
        List<Integer> now = positions;
        if (!now.equals(drawn)) {
            drawn = drawing.draw(whatIf, now) ? now : List.of();
        }
    }

    /** What a front end does to one control. */
    private final class Moves implements Widget.Moved {
        private final int number;

        Moves(int number) {
            this.number = number;
        }

        @Override
        public void notices(Comm.Data message) {
            newest = message;
        }

        @Override
        public boolean allows(Map<?, ?> change) {
            Control control = whatIf.controls().get(number);
            OptionalInt position = Controls.position(control, change);
            position.ifPresent(this::take);
            return position.isPresent();
        }

        private void take(int position) {
            List<Integer> moved = new ArrayList<>(positions);
            moved.set(number, position);
            positions = List.copyOf(moved);
        }

        @Override
        public void hears(Comm.Data message) {
            if (message == newest) {
                drawNewest();
            }
        }
    }
}

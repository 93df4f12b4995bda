package headrace.kernel.widget;

import headrace.report.whatif.Control;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The controls of a what-if as widgets. A slider goes over positions and shows the value there with its unit. */
final class Controls {
    private static final double EMS_A_LETTER = 0.62;

    private Controls() {}

    /** Returns a control whose positions have these labels, and whose name takes so much width. */
    static Widget widget(Control control, List<String> labels, String widthOfName) {
        Kind styled = control.form() == Control.Form.SLIDER ? Kind.SLIDER_STYLE : Kind.DESCRIPTION_STYLE;
        Map<String, Object> state = new LinkedHashMap<>();
        state.put("description", control.name());
        state.put("style", new Widget(styled, Map.of("description_width", widthOfName)));
        state.put("layout", wide("40rem"));
        if (control.form() != Control.Form.SWITCH) {
            state.put("_options_labels", labels);
        }
        Widget widget = new Widget(kind(control), state);
        put(control, widget, control.start());
        return widget;
    }

    /** Returns a button. */
    static Widget button(String label) {
        Widget layout = new Widget(Kind.LAYOUT, Map.of("width", "auto"));
        return new Widget(Kind.BUTTON, Map.of("description", label, "layout", layout));
    }

    /** Puts a control to a position. */
    static void put(Control control, Widget widget, int position) {
        if (control.form() == Control.Form.SWITCH) {
            widget.change("value", position == 1);
        } else {
            widget.change("index", position);
        }
    }

    /** Returns a layout as wide as its place, up to this. */
    static Widget wide(String most) {
        return new Widget(Kind.LAYOUT, Map.of("width", "100%", "max_width", most));
    }

    /** Returns the width that the longest of the names takes, so that the controls stand in line. */
    static String widthOfNames(List<Control> controls) {
        int longest = controls.stream()
                .mapToInt(control -> control.name().length())
                .max()
                .orElse(0);
        return Math.ceil(longest * EMS_A_LETTER) + 1 + "em";
    }

    /** Returns the position to which a front end moved a control; empty if there is none such. */
    static OptionalInt position(Control control, Map<?, ?> change) {
        if (control.form() == Control.Form.SWITCH) {
            return change.get("value") instanceof Boolean on ? OptionalInt.of(on ? 1 : 0) : OptionalInt.empty();
        }
        return change.get("index") instanceof Long index
                        && index >= 0
                        && index < control.positions().size()
                ? OptionalInt.of(index.intValue())
                : OptionalInt.empty();
    }

    private static Kind kind(Control control) {
        return switch (control.form()) {
            case SLIDER -> Kind.SLIDER;
            case CHOICE -> Kind.DROPDOWN;
            case SWITCH -> Kind.CHECKBOX;
        };
    }
}

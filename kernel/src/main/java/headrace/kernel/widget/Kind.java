package headrace.kernel.widget;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a front end makes of a widget.
 *
 * <p>Source: widget messaging protocol 2.1 with base and controls of version 2.0.0, as ipywidgets 8 publishes them.
 */
enum Kind {
    SLIDER("SelectionSlider"),
    DROPDOWN("Dropdown"),
    CHECKBOX("Checkbox"),
    BUTTON("Button"),
    LABEL("Label"),
    HTML("HTML"),
    IMAGE("Image"),
    PROGRESS("FloatProgress", "Progress"),
    COLUMN("VBox"),
    ROW("HBox"),
    TABS("Tab"),
    LAYOUT("Layout"),
    SLIDER_STYLE("SliderStyle", "Style"),
    DESCRIPTION_STYLE("DescriptionStyle", "Style");

    private static final String VERSION = "2.0.0";

    private final String model;
    private final String view;

    Kind(String name) {
        this(name, name);
    }

    Kind(String model, String view) {
        this.model = model;
        this.view = view;
    }

    /** Returns what every state of this kind begins with. */
    Map<String, Object> state() {
        Map<String, Object> state = new LinkedHashMap<>();
        state.put("_model_name", model + "Model");
        state.put("_model_module", this == LAYOUT ? "@jupyter-widgets/base" : "@jupyter-widgets/controls");
        state.put("_model_module_version", VERSION);
        state.put("_view_name", view + "View");
        // the view of every style is the base's, whose ever the style is
        state.put(
                "_view_module",
                view.equals("Style") || this == LAYOUT ? "@jupyter-widgets/base" : "@jupyter-widgets/controls");
        state.put("_view_module_version", VERSION);
        return state;
    }
}

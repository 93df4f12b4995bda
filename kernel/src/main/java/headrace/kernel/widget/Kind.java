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
    PROGRESS("FloatProgress"),
    COLUMN("VBox"),
    ROW("HBox"),
    TABS("Tab"),
    LAYOUT("Layout"),
    SLIDER_STYLE("SliderStyle"),
    DESCRIPTION_STYLE("DescriptionStyle");

    private static final String VERSION = "2.0.0";

    private final String name;

    Kind(String name) {
        this.name = name;
    }

    /** Returns what every state of this kind begins with. */
    Map<String, Object> state() {
        boolean style = name.endsWith("Style");
        Map<String, Object> state = new LinkedHashMap<>();
        state.put("_model_name", name + "Model");
        state.put("_model_module", this == LAYOUT ? "@jupyter-widgets/base" : "@jupyter-widgets/controls");
        state.put("_model_module_version", VERSION);
        state.put("_view_name", style ? "StyleView" : name + "View");
        // the view of every style is the base's, whose ever the style is
        state.put("_view_module", style || this == LAYOUT ? "@jupyter-widgets/base" : "@jupyter-widgets/controls");
        state.put("_view_module_version", VERSION);
        return state;
    }
}

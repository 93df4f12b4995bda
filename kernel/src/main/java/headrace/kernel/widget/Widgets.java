package headrace.kernel.widget;

import headrace.kernel.comm.Comms;
import headrace.kernel.comm.Half;
import headrace.kernel.comm.Pair;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.display.Moving;
import headrace.kernel.session.Session;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * All widgets of a kernel. Gives a front end that was loaded anew their states. May be used by any thread.
 *
 * <p>Source: widget messaging protocol 2.1, control target 1.0.0.
 */
public final class Widgets {
    /** What a front end that has widgets draws, in place of every other form. */
    static final String VIEW = "application/vnd.jupyter.widget-view+json";

    /** So many what-ifs at most are live at once. A cell that runs again and again leaves one behind each time. */
    static final int MOST_LIVE = 40;

    private final Comms comms;
    private final Supplier<Session> session;
    private final Map<String, Widget> open = new LinkedHashMap<>();
    private final Deque<Widget> live = new ArrayDeque<>();

    /**
     * Creates a kernel without widgets.
     *
     * @param session draws anew what is moved
     */
    public Widgets(Comms comms, Supplier<Session> session) {
        this.comms = comms;
        this.session = session;
        comms.register("jupyter.widget.control", (pair, opening) -> (Half) (own, message) -> {
            if ("request_states".equals(message.data().get("method"))) {
                sendStates(own);
            }
        });
    }

    /** Opens live controls for what can be moved, and returns it with the form that shows them. */
    public MimeBundle live(MimeBundle bundle) {
        Optional<Moving> moving = bundle.moving();
        if (moving.isEmpty()) {
            return bundle;
        }
        Widget root = new LiveWhatIf(moving.get(), session).root();
        root.open(new Widget.Home(comms, this::opened, this::ended));
        closeEarlier(root);
        return bundle.with(VIEW, "{\"model_id\": \"" + root.id() + "\", \"version_major\": 2, \"version_minor\": 0}");
    }

    private void closeEarlier(Widget newest) {
        List<Widget> tooMany = new ArrayList<>();
        synchronized (this) {
            live.add(newest);
            while (live.size() > MOST_LIVE) {
                tooMany.add(live.remove());
            }
        }
        tooMany.forEach(Widget::close);
    }

    private synchronized void opened(Widget widget) {
        open.put(widget.id(), widget);
    }

    private void ended(Widget widget) {
        boolean root;
        synchronized (this) {
            open.remove(widget.id());
            root = live.remove(widget);
        }
        if (root) {
            widget.closeParts();
        }
    }

    private void sendStates(Pair asking) {
        Map<String, Object> states = new LinkedHashMap<>();
        List<List<Object>> paths = new ArrayList<>();
        List<byte[]> buffers = new ArrayList<>();
        synchronized (this) {
            open.forEach((id, widget) -> {
                Written all = widget.written();
                states.put(id, described(all.state()));
                all.paths().forEach(path -> paths.add(List.of(id, "state", path.get(0))));
                buffers.addAll(all.buffers());
            });
        }
        asking.send(Map.of("method", "update_states", "states", states, "buffer_paths", paths), Map.of(), buffers);
    }

    private static Map<String, Object> described(Map<String, Object> state) {
        return Map.of(
                "model_name", state.get("_model_name"),
                "model_module", state.get("_model_module"),
                "model_module_version", state.get("_model_module_version"),
                "state", state);
    }
}

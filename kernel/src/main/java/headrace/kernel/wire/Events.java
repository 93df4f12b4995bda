package headrace.kernel.wire;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.message.Comm;
import headrace.kernel.message.Event;
import java.util.List;
import java.util.Map;

/**
 * What a message to all front ends says.
 *
 * @param type its kind, such as {@code stream}
 * @param content its content
 * @param buffers what goes with it as bytes
 */
record Events(String type, Map<String, Object> content, List<byte[]> buffers) {
    /** Puts an event into words of the protocol. */
    static Events of(Event event) {
        if (event instanceof Comm comm) {
            return of(comm);
        } else if (event instanceof Event.Status status) {
            return plain("status", "execution_state", status.state());
        } else if (event instanceof Event.Stream stream) {
            return plain("stream", "name", stream.name(), "text", stream.text());
        } else if (event instanceof Event.Input input) {
            return plain("execute_input", "code", input.code(), "execution_count", input.count());
        } else if (event instanceof Event.Result result) {
            return new Events("execute_result", shown(result.bundle(), "execution_count", result.count()), List.of());
        } else if (event instanceof Event.Display display) {
            Map<String, Object> names = display.id().map(Events::named).orElse(Map.of());
            return new Events("display_data", shown(display.bundle(), "transient", names), List.of());
        } else if (event instanceof Event.Update update) {
            Map<String, Object> content = shown(update.bundle(), "transient", named(update.id()));
            return new Events("update_display_data", content, List.of());
        } else if (event instanceof Event.Clear clear) {
            return plain("clear_output", "wait", clear.later());
        } else if (event instanceof Event.Failure failure) {
            Map<String, Object> content = Contents.fault(failure.fault());
            content.remove("status");
            return new Events("error", content, List.of());
        } else if (event instanceof Event.Ending ending) {
            return plain("shutdown_reply", "status", "ok", "restart", ending.restart());
        } else if (event instanceof Event.Welcome welcome) {
            return plain("iopub_welcome", "subscription", welcome.topic());
        }
        throw new IllegalArgumentException("No message of the protocol says " + event);
    }

    private static Events of(Comm comm) {
        if (comm instanceof Comm.Open open) {
            Map<String, Object> content =
                    Contents.tree("comm_id", open.id(), "target_name", open.target(), "data", open.data());
            return new Events("comm_open", content, open.buffers());
        } else if (comm instanceof Comm.Data data) {
            Map<String, Object> content = Contents.tree("comm_id", data.id(), "data", data.data());
            return new Events("comm_msg", content, data.buffers());
        }
        return plain("comm_close", "comm_id", comm.id(), "data", ((Comm.Close) comm).data());
    }

    private static Events plain(String type, Object... namesAndValues) {
        return new Events(type, Contents.tree(namesAndValues), List.of());
    }

    private static Map<String, Object> shown(MimeBundle bundle, String name, Object value) {
        return Contents.tree("data", Contents.forms(bundle), "metadata", Map.of(), name, value);
    }

    private static Map<String, Object> named(String id) {
        return Contents.tree("display_id", id);
    }
}

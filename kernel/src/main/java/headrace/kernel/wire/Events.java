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
 * @param metadata what is said of the message
 * @param buffers what goes with it as bytes
 */
record Events(String type, Map<String, Object> content, Map<String, Object> metadata, List<byte[]> buffers) {
    private static final Kinds<Event, Events> OF_KIND = new Kinds<Event, Events>()
            .with(Event.Status.class, status -> plain("status", "execution_state", status.state()))
            .with(Event.Input.class, Events::input)
            .with(Event.Stream.class, stream -> plain("stream", "name", stream.name(), "text", stream.text()))
            .with(Event.Display.class, Events::display)
            .with(Event.Update.class, Events::update)
            .with(Event.Clear.class, clear -> plain("clear_output", "wait", clear.later()))
            .with(Event.Result.class, Events::result)
            .with(Event.Failure.class, Events::failure)
            .with(Event.Ending.class, end -> plain("shutdown_reply", "status", "ok", "restart", end.restart()))
            .with(Event.Welcome.class, welcome -> plain("iopub_welcome", "subscription", welcome.topic()))
            .with(Comm.Open.class, Events::open)
            .with(Comm.Data.class, Events::data)
            .with(Comm.Close.class, close -> plain("comm_close", "comm_id", close.id(), "data", close.data()));

    private Events(String type, Map<String, Object> content) {
        this(type, content, Map.of(), List.of());
    }

    /** Puts an event into words of the protocol. */
    static Events of(Event event) {
        return OF_KIND.of(event);
    }

    private static Events input(Event.Input input) {
        return plain("execute_input", "code", input.code(), "execution_count", input.count());
    }

    private static Events display(Event.Display display) {
        Map<String, Object> names = display.id().map(Events::named).orElse(Map.of());
        return new Events("display_data", shown(display.bundle(), "transient", names));
    }

    private static Events update(Event.Update update) {
        Map<String, Object> content = shown(update.bundle(), "transient", named(update.id()));
        return new Events("update_display_data", content);
    }

    private static Events result(Event.Result result) {
        return new Events("execute_result", shown(result.bundle(), "execution_count", result.count()));
    }

    private static Events failure(Event.Failure failure) {
        Map<String, Object> content = Contents.fault(failure.fault());
        content.remove("status");
        return new Events("error", content);
    }

    private static Events open(Comm.Open open) {
        Map<String, Object> content =
                Contents.tree("comm_id", open.id(), "target_name", open.target(), "data", open.data());
        return new Events("comm_open", content, open.metadata(), open.buffers());
    }

    private static Events data(Comm.Data data) {
        Map<String, Object> content = Contents.tree("comm_id", data.id(), "data", data.data());
        return new Events("comm_msg", content, data.metadata(), data.buffers());
    }

    private static Events plain(String type, Object... namesAndValues) {
        return new Events(type, Contents.tree(namesAndValues));
    }

    private static Map<String, Object> shown(MimeBundle bundle, String name, Object value) {
        return Contents.tree("data", Contents.forms(bundle), "metadata", Map.of(), name, value);
    }

    private static Map<String, Object> named(String id) {
        return Contents.tree("display_id", id);
    }
}

package headrace.kernel.wire;

import headrace.kernel.message.Comm;
import headrace.kernel.message.Request;
import headrace.kernel.message.Request.HistoryChoice;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Makes requests of the content of messages. */
final class Requests {
    private Requests() {}

    /** Returns the request; an honest message that cannot be understood becomes one that says so. */
    static Request of(String type, Map<String, Object> content, Map<String, Object> metadata, List<byte[]> buffers) {
        try {
            return understood(type, new Fields(content), metadata, buffers);
        } catch (IllegalArgumentException misfit) {
            return new Request.Unreadable(misfit.getMessage());
        }
    }

    private static Request understood(String type, Fields content, Map<String, Object> metadata, List<byte[]> buffers) {
        return switch (type) {
            case "kernel_info_request" -> new Request.KernelInfo();
            case "execute_request" -> execute(content);
            case "complete_request" -> {
                String code = content.text("code");
                yield new Request.Complete(code, content.whole("cursor_pos", code.length()));
            }
            case "inspect_request" -> {
                String code = content.text("code");
                int cursor = content.whole("cursor_pos", code.length());
                yield new Request.Inspect(code, cursor, content.whole("detail_level", 0));
            }
            case "is_complete_request" -> new Request.IsComplete(content.text("code"));
            case "history_request" -> new Request.History(content.flag("output", false), historyChoice(content));
            case "comm_info_request" -> new Request.CommInfo(content.text("target_name", ""));
            case "connect_request" -> new Request.Connect();
            case "interrupt_request" -> new Request.Interrupt();
            case "shutdown_request" -> new Request.Shutdown(content.flag("restart", false));
            case "input_reply" -> new Request.Answer(content.text("value", ""));
            case "comm_open" ->
                new Comm.Open(
                        content.text("comm_id"),
                        content.text("target_name", ""),
                        content.tree("data"),
                        metadata,
                        buffers);
            case "comm_msg" -> new Comm.Data(content.text("comm_id"), content.tree("data"), metadata, buffers);
            case "comm_close" -> new Comm.Close(content.text("comm_id"), content.tree("data"));
            default -> new Request.Unknown(type);
        };
    }

    private static Request execute(Fields content) {
        return new Request.Execute(
                content.text("code"),
                content.flag("silent", false),
                content.flag("store_history", true),
                content.texts("user_expressions"),
                content.flag("allow_stdin", true),
                content.flag("stop_on_error", true));
    }

    private static HistoryChoice historyChoice(Fields content) {
        String access = content.text("hist_access_type", "tail");
        return switch (access) {
            case "tail" -> new HistoryChoice.Tail(content.whole("n", Integer.MAX_VALUE));
            case "range" -> {
                OptionalInt stop = content.whole("stop");
                yield new HistoryChoice.Range(content.whole("session", 0), content.whole("start", 0), stop);
            }
            case "search" ->
                new HistoryChoice.Search(
                        content.text("pattern", "*"), content.whole("n"), content.flag("unique", false));
            default ->
                throw new IllegalArgumentException(
                        "The field hist_access_type of the content is to be tail, range or search");
        };
    }
}

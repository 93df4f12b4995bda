package headrace.kernel.wire;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.message.Fault;
import headrace.kernel.message.Identity;
import headrace.kernel.message.Reply;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Makes the content of messages of replies. */
final class Contents {
    /** The version of the protocol in which all messages are written. */
    static final String PROTOCOL = "5.5";

    private static final Kinds<Reply, Map<String, Object>> OF_KIND = new Kinds<Reply, Map<String, Object>>()
            .with(Reply.Done.class, done -> ok())
            .with(Reply.Failed.class, failed -> fault(failed.fault()))
            .with(Reply.KernelInfo.class, info -> identity(info.identity()))
            .with(Reply.Executed.class, Contents::executed)
            .with(Reply.ExecuteFailed.class, Contents::executeFailed)
            .with(Reply.Aborted.class, aborted -> tree("status", "aborted", "execution_count", aborted.count()))
            .with(Reply.Complete.class, Contents::complete)
            .with(Reply.Inspect.class, Contents::inspect)
            .with(Reply.IsComplete.class, Contents::isComplete)
            .with(Reply.History.class, Contents::history)
            .with(Reply.CommInfo.class, Contents::comms)
            .with(Reply.Connect.class, Contents::ports)
            .with(Reply.Shutdown.class, shutdown -> ok("restart", shutdown.restart()));

    private Contents() {}

    /** Returns the content of a reply. */
    static Map<String, Object> of(Reply reply) {
        return OF_KIND.of(reply);
    }

    /** Returns the content of an error, in a reply and as it is published. */
    static Map<String, Object> fault(Fault fault) {
        return tree("status", "error", "ename", fault.name(), "evalue", fault.value(), "traceback", fault.traceback());
    }

    /** Returns the forms of a thing; those whose type is a kind of JSON as trees, the others as text. */
    static Map<String, Object> forms(MimeBundle bundle) {
        Map<String, Object> forms = new LinkedHashMap<>();
        bundle.forms().forEach((type, form) -> forms.put(type, isJson(type) ? parsed(form) : form));
        return forms;
    }

    /** Returns an object of names and values in turn. */
    static Map<String, Object> tree(Object... namesAndValues) {
        Map<String, Object> tree = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            tree.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return tree;
    }

    private static Map<String, Object> ok(Object... namesAndValues) {
        Map<String, Object> content = tree("status", "ok");
        content.putAll(tree(namesAndValues));
        return content;
    }

    private static Map<String, Object> executeFailed(Reply.ExecuteFailed failed) {
        Map<String, Object> content = fault(failed.fault());
        content.put("execution_count", failed.count());
        return content;
    }

    private static Map<String, Object> isComplete(Reply.IsComplete is) {
        return is.status().equals("incomplete")
                ? tree("status", is.status(), "indent", is.indent())
                : tree("status", is.status());
    }

    private static boolean isJson(String type) {
        return type.equals("application/json") || type.endsWith("+json");
    }

    private static Object parsed(String form) {
        try {
            return Json.parse(form);
        } catch (IOException notJson) {
            return form;
        }
    }

    private static Map<String, Object> executed(Reply.Executed executed) {
        Map<String, Object> expressions = new LinkedHashMap<>();
        executed.expressions().forEach((name, expression) -> {
            if (expression instanceof Reply.Expression.Value value) {
                expressions.put(name, ok("data", forms(value.bundle()), "metadata", Map.of()));
            } else if (expression instanceof Reply.Expression.Failed failed) {
                expressions.put(name, fault(failed.fault()));
            }
        });
        List<Object> payload = new ArrayList<>();
        executed.page().ifPresent(page -> payload.add(tree("source", "page", "data", forms(page), "start", 0)));
        return ok("execution_count", executed.count(), "user_expressions", expressions, "payload", payload);
    }

    private static Map<String, Object> identity(Identity identity) {
        Identity.Language language = identity.language();
        List<Object> links = new ArrayList<>();
        identity.links().forEach((title, address) -> links.add(tree("text", title, "url", address)));
        return ok(
                "protocol_version", PROTOCOL,
                "implementation", "headrace",
                "implementation_version", identity.version(),
                "language_info",
                        tree(
                                "name", language.name(),
                                "version", language.version(),
                                "mimetype", language.mimeType(),
                                "file_extension", language.extension(),
                                "pygments_lexer", language.name(),
                                "codemirror_mode", language.name(),
                                "nbconvert_exporter", "script"),
                "banner", identity.banner(),
                "help_links", links,
                "supported_features", List.of());
    }

    private static Map<String, Object> complete(Reply.Complete complete) {
        List<Object> texts = new ArrayList<>();
        List<Object> typed = new ArrayList<>();
        for (Reply.Match match : complete.matches()) {
            texts.add(match.text());
            typed.add(tree(
                    "text", match.text(),
                    "type", match.type(),
                    "signature", match.signature(),
                    "start", complete.start(),
                    "end", complete.end()));
        }
        return ok(
                "matches", texts,
                "cursor_start", complete.start(),
                "cursor_end", complete.end(),
                "metadata", tree("_jupyter_types_experimental", typed));
    }

    private static Map<String, Object> inspect(Reply.Inspect inspect) {
        Map<String, Object> forms = inspect.bundle().map(Contents::forms).orElse(Map.of());
        return ok("found", inspect.bundle().isPresent(), "data", forms, "metadata", Map.of());
    }

    private static Map<String, Object> history(Reply.History history) {
        List<Object> entries = new ArrayList<>();
        for (Reply.Past past : history.entries()) {
            Object cell = past.code();
            if (history.output()) {
                List<Object> pair = new ArrayList<>();
                pair.add(past.code());
                pair.add(past.result().isEmpty() ? null : past.result());
                cell = pair;
            }
            entries.add(List.of(past.session(), past.count(), cell));
        }
        return ok("history", entries);
    }

    private static Map<String, Object> comms(Reply.CommInfo info) {
        Map<String, Object> comms = new LinkedHashMap<>();
        info.targets().forEach((id, target) -> comms.put(id, tree("target_name", target)));
        return ok("comms", comms);
    }

    private static Map<String, Object> ports(Reply.Connect ports) {
        return ok(
                "shell_port", ports.shell(),
                "iopub_port", ports.iopub(),
                "stdin_port", ports.stdin(),
                "control_port", ports.control(),
                "hb_port", ports.heartbeat());
    }
}

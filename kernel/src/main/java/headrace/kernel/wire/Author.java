package headrace.kernel.wire;

import headrace.kernel.message.Event;
import headrace.kernel.message.Header;
import headrace.kernel.message.Question;
import headrace.kernel.message.Reply;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Writes the kernel's messages, each under a header of its own. May be used by any thread.
 *
 * <p>The session in every header is the kernel's, one for each process: front ends tell by it whether the kernel behind
 * a connection is still the same.
 */
public final class Author {
    private final String session = UUID.randomUUID().toString();
    private final AtomicLong written = new AtomicLong();

    /** Writes the answer to a request. */
    public Outgoing reply(Incoming request, Reply reply) {
        String type = request.header().type().replaceFirst("_request$", "_reply");
        return message(request.route(), type, request.header(), Contents.of(reply), Map.of(), List.of());
    }

    /** Writes what a request caused, for all front ends. */
    public Outgoing event(Header parent, Event event) {
        Events words = Events.of(event);
        byte[] topic = event instanceof Event.Welcome welcome
                ? welcome.topic().getBytes(StandardCharsets.UTF_8)
                : ("kernel." + session + "." + words.type()).getBytes(StandardCharsets.US_ASCII);
        return message(List.of(topic), words.type(), parent, words.content(), words.metadata(), words.buffers());
    }

    /** Returns whether an identity is that of a message written here. */
    public boolean wrote(String id) {
        return id.startsWith(session + "_");
    }

    /** Writes a question to the user whose front end sent this request. */
    public Outgoing question(Incoming request, Question question) {
        Map<String, Object> content = Contents.tree("prompt", question.prompt(), "password", question.secret());
        return message(request.route(), "input_request", request.header(), content, Map.of(), List.of());
    }

    /** Writes a request, as a front end does. */
    public Outgoing request(String type, Map<String, ?> content) {
        return message(List.of(), type, Header.NONE, content, Map.of(), List.of());
    }

    private Outgoing message(
            List<byte[]> route,
            String type,
            Header parent,
            Map<String, ?> content,
            Map<String, ?> metadata,
            List<byte[]> buffers) {
        String id = session + "_" + written.incrementAndGet();
        List<byte[]> parts = List.of(
                Json.bytes(header(id, type)),
                parent.raw().getBytes(StandardCharsets.UTF_8),
                Json.bytes(metadata),
                Json.bytes(content));
        return new Outgoing(id, route, parts, buffers);
    }

    private Map<String, Object> header(String id, String type) {
        Map<String, Object> header = new LinkedHashMap<>();
        header.put("msg_id", id);
        header.put("msg_type", type);
        header.put("username", "kernel");
        header.put("session", session);
        header.put("date", Instant.now().truncatedTo(ChronoUnit.MICROS).toString());
        header.put("version", Contents.PROTOCOL);
        return header;
    }
}

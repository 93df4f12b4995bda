package headrace.kernel.server;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;

/**
 * A front end of the open protocol that shares no code with the kernel: it signs, writes and reads messages by itself,
 * so that a mistake of the kernel's cannot cancel itself out.
 */
final class FrontEnd implements AutoCloseable {
    /** Ends a test whose kernel stays mute; no figure of any kind. */
    private static final int MUTE_MILLISECONDS = 30_000;

    private final ZMQ.Context context = ZMQ.context(1);
    private final String session = UUID.randomUUID().toString();
    private final String key;
    private final String curveKey;
    private final ZMQ.Socket shell;
    private final ZMQ.Socket control;
    private final ZMQ.Socket stdin;
    private final ZMQ.Socket iopub;
    private final ZMQ.Socket heartbeat;
    private final List<Message> heard = new ArrayList<>();
    private int written;

    /** A message as it came. */
    record Message(
            List<String> route,
            JsonObject header,
            JsonObject parent,
            JsonObject metadata,
            JsonObject content,
            List<byte[]> buffers) {
        String type() {
            return header.get("msg_type").getAsString();
        }

        String text(String name) {
            return content.get(name).getAsString();
        }

        int whole(String name) {
            return content.get(name).getAsInt();
        }

        boolean answers(String id) {
            return parent.has("msg_id") && parent.get("msg_id").getAsString().equals(id);
        }

        boolean isStatus(String state) {
            return type().equals("status") && text("execution_state").equals(state);
        }
    }

    /** A request's reply and everything that was published for it, from busy to idle. */
    record Exchange(Message reply, List<Message> events) {
        List<String> types() {
            return events.stream().map(Message::type).toList();
        }

        Message event(String type) {
            return events.stream()
                    .filter(event -> event.type().equals(type))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("No " + type + " among " + events));
        }

        /** Returns everything printed to a stream. */
        String printed(String stream) {
            StringBuilder all = new StringBuilder();
            for (Message event : events) {
                if (event.type().equals("stream") && event.text("name").equals(stream)) {
                    all.append(event.text("text"));
                }
            }
            return all.toString();
        }
    }

    /** Connects to a kernel at ports in the order shell, iopub, stdin, control, heartbeat. */
    FrontEnd(String address, int[] ports, String key) {
        this(address, ports, key, "");
    }

    /** Connects to a kernel that encrypts, whose public key this is; one that does not has an empty key. */
    FrontEnd(String address, int[] ports, String key, String curveKey) {
        this(address, ports, key, curveKey, true);
    }

    private FrontEnd(String address, int[] ports, String key, String curveKey, boolean welcomed) {
        this.key = key;
        this.curveKey = curveKey;
        shell = connected(SocketType.DEALER, address + ":" + ports[0]);
        iopub = connected(SocketType.SUB, address + ":" + ports[1]);
        stdin = connected(SocketType.DEALER, address + ":" + ports[2]);
        control = connected(SocketType.DEALER, address + ":" + ports[3]);
        heartbeat = connected(SocketType.REQ, address + ":" + ports[4]);
        if (welcomed) {
            awaitEvent(message -> message.type().equals("iopub_welcome"));
        }
    }

    /** Connects to a kernel that will not let it in. */
    static FrontEnd unwelcomed(String address, int[] ports, String key) {
        return new FrontEnd(address, ports, key, "", false);
    }

    private ZMQ.Socket connected(SocketType type, String address) {
        ZMQ.Socket socket = context.socket(type);
        if (type == SocketType.DEALER) {
            socket.setIdentity(bytes(session));
        } else if (type == SocketType.SUB) {
            socket.subscribe(ZMQ.SUBSCRIPTION_ALL);
        }
        if (!curveKey.isEmpty()) {
            ZMQ.Curve.KeyPair own = ZMQ.Curve.generateKeyPair();
            socket.setCurveServerKey(ZMQ.Curve.z85Decode(curveKey));
            socket.setCurvePublicKey(ZMQ.Curve.z85Decode(own.publicKey));
            socket.setCurveSecretKey(ZMQ.Curve.z85Decode(own.secretKey));
        }
        socket.setHWM(0);
        socket.setLinger(0);
        socket.setReceiveTimeOut(MUTE_MILLISECONDS);
        socket.connect(address);
        return socket;
    }

    String session() {
        return session;
    }

    /** Sends a request over the shell channel and returns its identity. */
    String ask(String type, Map<String, ?> content) {
        return send(shell, type, content, "{}");
    }

    /** Sends a request over the control channel and returns its identity. */
    String command(String type, Map<String, ?> content) {
        return send(control, type, content, "{}");
    }

    /** Answers a question. */
    void answer(Message question, String value) {
        send(stdin, "input_reply", Map.of("value", value), question.header().toString());
    }

    /** Sends a request with buffers over the shell channel and returns its identity. */
    String ask(String type, Map<String, ?> content, List<byte[]> buffers) {
        List<byte[]> frames = frames(type, content, "{}");
        frames.addAll(buffers);
        sendRaw(frames);
        return session + "-" + written;
    }

    /** Sends frames as they are over the shell channel. */
    void sendRaw(List<byte[]> frames) {
        for (int i = 0; i < frames.size(); i++) {
            shell.send(frames.get(i), i < frames.size() - 1 ? ZMQ.SNDMORE : 0);
        }
    }

    /** Returns the frames of an honest request. */
    List<byte[]> frames(String type, Map<String, ?> content, String parent) {
        written++;
        String header = new Gson()
                .toJson(Map.of(
                        "msg_id", session + "-" + written,
                        "msg_type", type,
                        "session", session,
                        "username", "engineer",
                        "date", "2026-01-01T00:00:00Z",
                        "version", "5.3",
                        "not_in_the_protocol", "kept"));
        List<byte[]> parts = List.of(bytes(header), bytes(parent), bytes("{}"), bytes(new Gson().toJson(content)));
        List<byte[]> frames = new ArrayList<>(List.of(bytes("<IDS|MSG>"), sign(parts)));
        frames.addAll(parts);
        return frames;
    }

    byte[] sign(List<byte[]> parts) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(bytes(key), "HmacSHA256"));
            parts.forEach(mac::update);
            return bytes(HexFormat.of().formatHex(mac.doFinal()));
        } catch (java.security.GeneralSecurityException e) {
            throw new AssertionError(e);
        }
    }

    private String send(ZMQ.Socket socket, String type, Map<String, ?> content, String parent) {
        List<byte[]> frames = frames(type, content, parent);
        for (int i = 0; i < frames.size(); i++) {
            socket.send(frames.get(i), i < frames.size() - 1 ? ZMQ.SNDMORE : 0);
        }
        return session + "-" + written;
    }

    /** Waits for the reply to a request of the shell channel. Replies to others are passed over. */
    Message reply(String id) {
        return received(shell, id);
    }

    /** Waits for the reply to a request of the control channel. */
    Message commandReply(String id) {
        return received(control, id);
    }

    private Message received(ZMQ.Socket socket, String id) {
        while (true) {
            Message message = receive(socket);
            if (message.answers(id)) {
                return message;
            }
        }
    }

    /** Waits for a question to the user. */
    Message question() {
        return receive(stdin);
    }

    /** Waits until a request is over and returns what was published for it, from busy to idle. */
    List<Message> eventsOf(String id) {
        awaitEvent(message -> message.answers(id) && message.isStatus("idle"));
        return heardOf(id);
    }

    /** Returns what was heard so far. */
    List<Message> heard() {
        return List.copyOf(heard);
    }

    /** Forgets what was heard so far. */
    void forget() {
        heard.clear();
    }

    /** Returns what was heard so far of a request. */
    List<Message> heardOf(String id) {
        return heard.stream().filter(message -> message.answers(id)).toList();
    }

    /** Waits for an event, which may have been heard already. */
    Message awaitEvent(Predicate<Message> wanted) {
        for (Message message : heard) {
            if (wanted.test(message)) {
                return message;
            }
        }
        while (true) {
            Message message = receive(iopub);
            heard.add(message);
            if (wanted.test(message)) {
                return message;
            }
        }
    }

    /** Sends a request and waits until it is over. */
    Exchange exchange(String type, Map<String, ?> content) {
        String id = ask(type, content);
        return new Exchange(reply(id), eventsOf(id));
    }

    /** Runs a cell to its end. */
    Exchange run(String code) {
        return exchange("execute_request", Map.of("code", code));
    }

    /** Sends bytes to the heartbeat and returns what comes back. */
    byte[] beat(byte[] bytes) {
        heartbeat.send(bytes);
        return heartbeat.recv();
    }

    private Message receive(ZMQ.Socket socket) {
        List<byte[]> frames = new ArrayList<>();
        byte[] frame = socket.recv();
        if (frame == null) {
            throw new AssertionError("The kernel stays mute; heard so far: "
                    + heard.stream().map(Message::type).toList());
        }
        frames.add(frame);
        while (socket.hasReceiveMore()) {
            frames.add(socket.recv());
        }
        return message(frames);
    }

    private Message message(List<byte[]> frames) {
        List<String> texts = frames.stream()
                .map(frame -> new String(frame, StandardCharsets.UTF_8))
                .toList();
        int delimiter = texts.indexOf("<IDS|MSG>");
        List<byte[]> parts = frames.subList(delimiter + 2, delimiter + 6);
        if (!new String(sign(parts), StandardCharsets.UTF_8).equals(texts.get(delimiter + 1))) {
            throw new AssertionError("A message of the kernel is signed wrongly: " + texts);
        }
        List<JsonObject> objects = texts.subList(delimiter + 2, delimiter + 6).stream()
                .map(text -> JsonParser.parseString(text).getAsJsonObject())
                .toList();
        return new Message(
                texts.subList(0, delimiter),
                objects.get(0),
                objects.get(1),
                objects.get(2),
                objects.get(3),
                List.copyOf(frames.subList(delimiter + 6, frames.size())));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public void close() {
        List.of(shell, control, stdin, iopub, heartbeat).forEach(socket -> {
            socket.setLinger(0);
            socket.close();
        });
        context.term();
    }
}

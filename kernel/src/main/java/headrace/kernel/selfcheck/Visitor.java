package headrace.kernel.selfcheck;

import headrace.kernel.wire.Author;
import headrace.kernel.wire.ConnectionFile;
import headrace.kernel.wire.Frames;
import headrace.kernel.wire.Heard;
import headrace.kernel.wire.Outgoing;
import headrace.kernel.wire.Rejected;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;

/** A front end without a face: asks a kernel, and waits until it has answered. Used by one thread. */
final class Visitor implements AutoCloseable {
    private static final int PATIENCE_SECONDS = 60;
    private static final int GLANCE_MILLISECONDS = 100;

    private final Author author = new Author();
    private final Frames frames;
    private final ZMQ.Context context = ZMQ.context(1);
    private final BooleanSupplier alive;
    private final ZMQ.Socket shell;
    private final ZMQ.Socket control;
    private final ZMQ.Socket iopub;
    private final ZMQ.Socket heartbeat;

    /**
     * Connects to a kernel, which need not listen yet.
     *
     * @param alive whether an answer can still come
     */
    Visitor(ConnectionFile file, BooleanSupplier alive) {
        this.alive = alive;
        frames = new Frames(file.signature());
        shell = connected(SocketType.DEALER, file.address() + ":" + file.ports().shell());
        control =
                connected(SocketType.DEALER, file.address() + ":" + file.ports().control());
        iopub = connected(SocketType.SUB, file.address() + ":" + file.ports().iopub());
        iopub.subscribe(ZMQ.SUBSCRIPTION_ALL);
        heartbeat =
                connected(SocketType.REQ, file.address() + ":" + file.ports().heartbeat());
    }

    private ZMQ.Socket connected(SocketType type, String address) {
        ZMQ.Socket socket = context.socket(type);
        socket.setLinger(0);
        socket.setReceiveTimeOut(GLANCE_MILLISECONDS);
        socket.connect(address);
        return socket;
    }

    /** A request's reply and what was published for it until it was over; less, if the kernel fell silent. */
    record Told(Map<String, Object> reply, List<Heard> events) {
        boolean says(String name, Object value) {
            return value.equals(reply.get(name));
        }

        /** Returns everything that was said in a field of the events of a kind. */
        String all(String type, String field) {
            return events.stream()
                    .filter(event -> event.type().equals(type))
                    .map(event -> String.valueOf(event.content().get(field)))
                    .collect(Collectors.joining());
        }
    }

    /**
     * Asks, and waits for the answer.
     *
     * @return whether one came in time
     */
    boolean ask(String type, Map<String, ?> content) {
        return !answer(shell, sent(shell, type, content)).isEmpty();
    }

    /** Asks over the channel of urgent requests, and waits for the answer. */
    boolean command(String type) {
        return !answer(control, sent(control, type, Map.of())).isEmpty();
    }

    /** Sends a request, and returns its identity. */
    String begin(String type, Map<String, ?> content) {
        return sent(shell, type, content);
    }

    /** Runs a cell. */
    Told run(String code) {
        return told(begin("execute_request", Map.of("code", code, "allow_stdin", false)));
    }

    /** Waits until a request is over. */
    Told told(String request) {
        Map<String, Object> reply = answer(shell, request);
        return new Told(reply, reply.isEmpty() ? List.of() : until(request, event -> false));
    }

    /** Waits until a request has printed something, and returns whether it did. */
    boolean prints(String request) {
        Predicate<Heard> printing = event -> event.type().equals("stream");
        return until(request, printing).stream().anyMatch(printing);
    }

    /** Returns the events of a request until one of this kind, or the end of the request. */
    private List<Heard> until(String request, Predicate<Heard> last) {
        List<Heard> events = new ArrayList<>();
        while (true) {
            List<byte[]> message = received(iopub);
            if (message.isEmpty()) {
                return events;
            }
            try {
                Heard event = frames.hear(message);
                if (!event.cause().equals(request)) {
                    continue;
                }
                events.add(event);
                if (last.test(event) || "idle".equals(event.content().get("execution_state"))) {
                    return events;
                }
            } catch (Rejected notOurs) {
                continue;
            }
        }
    }

    private String sent(ZMQ.Socket socket, String type, Map<String, ?> content) {
        Outgoing request = author.request(type, content);
        List<byte[]> message = frames.write(request);
        for (int i = 0; i < message.size(); i++) {
            socket.send(message.get(i), i < message.size() - 1 ? ZMQ.SNDMORE : 0);
        }
        return request.id();
    }

    /** Returns the content of the answer, empty if none came in time. */
    private Map<String, Object> answer(ZMQ.Socket socket, String request) {
        while (true) {
            List<byte[]> answer = received(socket);
            if (answer.isEmpty()) {
                return Map.of();
            }
            try {
                Heard heard = frames.hear(answer);
                if (heard.cause().equals(request)) {
                    return heard.content();
                }
            } catch (Rejected notOurs) {
                continue;
            }
        }
    }

    /** Returns whether the kernel's heart beats. */
    boolean beats() {
        heartbeat.send("beat");
        return !received(heartbeat).isEmpty();
    }

    /** Returns the frames of a message, none if the kernel is gone or stays mute. */
    private List<byte[]> received(ZMQ.Socket socket) {
        List<byte[]> message = new ArrayList<>();
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        byte[] frame = socket.recv();
        while (frame == null && alive.getAsBoolean() && System.nanoTime() < end) {
            frame = socket.recv();
        }
        while (frame != null) {
            message.add(frame);
            frame = socket.hasReceiveMore() ? socket.recv() : null;
        }
        return message;
    }

    @Override
    public void close() {
        List.of(shell, control, iopub, heartbeat).forEach(ZMQ.Socket::close);
        context.term();
    }
}

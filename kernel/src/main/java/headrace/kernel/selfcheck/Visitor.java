package headrace.kernel.selfcheck;

import headrace.kernel.wire.Author;
import headrace.kernel.wire.ConnectionFile;
import headrace.kernel.wire.Frames;
import headrace.kernel.wire.Outgoing;
import headrace.kernel.wire.Rejected;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
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

    /**
     * Asks, and waits for the answer.
     *
     * @return whether one came in time
     */
    boolean ask(String type, Map<String, ?> content) {
        Outgoing request = author.request(type, content);
        send(frames.write(request));
        while (true) {
            List<byte[]> answer = received(shell);
            if (answer.isEmpty()) {
                return false;
            }
            try {
                if (frames.read(answer).cause().equals(request.id())) {
                    return true;
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

    private void send(List<byte[]> message) {
        for (int i = 0; i < message.size(); i++) {
            shell.send(message.get(i), i < message.size() - 1 ? ZMQ.SNDMORE : 0);
        }
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
        List.of(shell, iopub, heartbeat).forEach(ZMQ.Socket::close);
        context.term();
    }
}

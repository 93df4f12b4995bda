package headrace.kernel.server;

import headrace.kernel.wire.ConnectionFile;
import headrace.kernel.wire.Frames;
import headrace.kernel.wire.Incoming;
import headrace.kernel.wire.Outgoing;
import headrace.kernel.wire.Rejected;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.zeromq.ZMQ;
import org.zeromq.ZMQException;

/**
 * Carries messages between the sockets and everyone else.
 *
 * <p>One thread owns the sockets, because a socket breaks for good when a thread that is being interrupted uses it, and
 * the thread of a cell can be interrupted at any moment. All others only lay messages in a queue. There is one queue
 * for all channels, so that a reply never overtakes what was published before it.
 */
final class Courier {
    /** Hears what comes in, on the courier's thread; must answer at once. */
    interface Reader {
        /** Takes an honest message. */
        void received(Channel channel, Incoming message);

        /** Hears that a front end began to listen to messages whose topic begins so. */
        void subscribed(String topic);
    }

    /** So that a flood of requests cannot keep replies waiting. */
    private static final int AT_ONCE = 64;

    private final Map<Channel, ZMQ.Socket> sockets;
    private final Frames frames;
    private final Log log;
    private final Selector selector;
    private final Queue<Letter> waiting = new ConcurrentLinkedQueue<>();
    private volatile boolean finishing;
    private Thread thread;

    /** A message and its way. */
    private record Letter(Channel channel, Outgoing message) {}

    /** Creates a courier for sockets that from here on belong to its thread. */
    Courier(Map<Channel, ZMQ.Socket> sockets, ConnectionFile file, Log log) {
        this.sockets = sockets;
        this.frames = new Frames(file.signature());
        this.log = log;
        try {
            selector = Selector.open();
            for (ZMQ.Socket socket : sockets.values()) {
                socket.getFD().register(selector, SelectionKey.OP_READ);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void start(Reader reader) {
        thread = new Thread(() -> run(reader), "headrace-courier");
        thread.setDaemon(true);
        thread.start();
    }

    /** Lets a message be sent. May be called by any thread, interrupted or not. */
    void send(Channel channel, Outgoing message) {
        waiting.add(new Letter(channel, message));
        selector.wakeup();
    }

    /** Sends what waits, closes the sockets, and returns when that is done. */
    void finish() throws InterruptedException {
        finishing = true;
        selector.wakeup();
        thread.join();
    }

    private void run(Reader reader) {
        try {
            while (!finishing) {
                boolean moved = sendWaiting();
                for (Channel channel : sockets.keySet()) {
                    moved |= receive(channel, reader);
                }
                if (!moved) {
                    selector.select();
                    selector.selectedKeys().clear();
                }
            }
            sendWaiting();
            selector.close();
        } catch (IOException e) {
            log.failed("The kernel lost its connections.", e);
        } finally {
            sockets.values().forEach(ZMQ.Socket::close);
        }
    }

    private boolean sendWaiting() {
        boolean moved = false;
        for (Letter letter = waiting.poll(); letter != null; letter = waiting.poll()) {
            moved = true;
            send(sockets.get(letter.channel()), frames.write(letter.message()));
        }
        return moved;
    }

    private void send(ZMQ.Socket socket, List<byte[]> message) {
        int last = message.size() - 1;
        try {
            for (int i = 0; i <= last; i++) {
                socket.send(message.get(i), i < last ? ZMQ.SNDMORE : 0);
            }
        } catch (ZMQException e) {
            log.failed("A message could not be sent.", e);
        }
    }

    private boolean receive(Channel channel, Reader reader) {
        ZMQ.Socket socket = sockets.get(channel);
        int received = 0;
        while (received < AT_ONCE && (socket.getEvents() & ZMQ.Poller.POLLIN) != 0) {
            List<byte[]> message = new ArrayList<>();
            do {
                message.add(socket.recv());
            } while (socket.hasReceiveMore());
            received++;
            deliver(channel, message, reader);
        }
        return received > 0;
    }

    private void deliver(Channel channel, List<byte[]> message, Reader reader) {
        try {
            if (channel == Channel.IOPUB) {
                subscription(message.get(0), reader);
            } else {
                reader.received(channel, frames.read(message));
            }
        } catch (Rejected rejected) {
            log.dropped(rejected.reason());
        } catch (RuntimeException | OutOfMemoryError e) {
            log.failed("A message could not be dealt with.", e);
        }
    }

    private static void subscription(byte[] frame, Reader reader) {
        if (frame.length == 0 || frame[0] != 1) {
            return;
        }
        byte[] topic = Arrays.copyOfRange(frame, 1, frame.length);
        try {
            reader.subscribed(StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(topic))
                    .toString());
        } catch (CharacterCodingException notText) {
            return; // a front end that listens to what no topic begins with needs no welcome
        }
    }
}

package headrace.kernel.server;

import org.zeromq.ZMQ;
import org.zeromq.ZMQException;

/** Sends back whatever comes, on a thread of its own, so that a front end can tell a busy kernel from a dead one. */
final class Heartbeat {
    private Heartbeat() {}

    /** Starts beating at a socket that from here on belongs to the heartbeat, until the transport ends. */
    static Thread start(ZMQ.Socket socket) {
        Thread thread = new Thread(() -> beat(socket), "headrace-heartbeat");
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private static void beat(ZMQ.Socket socket) {
        try {
            while (true) {
                byte[] frame = socket.recv();
                if (frame == null) {
                    return;
                }
                socket.send(frame, socket.hasReceiveMore() ? ZMQ.SNDMORE : 0);
            }
        } catch (ZMQException ended) {
            return; // the transport ends
        } finally {
            socket.close();
        }
    }
}

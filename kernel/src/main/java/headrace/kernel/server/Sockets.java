package headrace.kernel.server;

import headrace.kernel.wire.ConnectionFile;
import headrace.problem.Refusal;
import java.util.EnumMap;
import java.util.Map;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import org.zeromq.ZMQException;

/** Opens the sockets that a connection file asks for. */
final class Sockets {
    /** Long enough for the last messages to leave on one machine, short enough that nobody waits for an end. */
    private static final int LINGER_MILLISECONDS = 300;

    /** Far above any notebook's cell, and small enough that rubbish cannot fill the memory at once. */
    private static final long LARGEST_FRAME = 256L << 20;

    private final ZMQ.Context context = ZMQ.context(1);
    private final Map<Channel, ZMQ.Socket> channels = new EnumMap<>(Channel.class);
    private final ConnectionFile file;
    private ZMQ.Socket heartbeat;

    private Sockets(ConnectionFile file) {
        this.file = file;
    }

    /** Opens all sockets, or none. */
    static Sockets open(ConnectionFile file) {
        Sockets sockets = new Sockets(file);
        try {
            ConnectionFile.Ports ports = file.ports();
            sockets.channels.put(Channel.SHELL, sockets.router(ports.shell()));
            sockets.channels.put(Channel.CONTROL, sockets.router(ports.control()));
            sockets.channels.put(Channel.STDIN, sockets.router(ports.stdin()));
            sockets.channels.put(Channel.IOPUB, sockets.broadcast(ports.iopub()));
            sockets.heartbeat = sockets.router(ports.heartbeat());
            return sockets;
        } catch (Refusal refusal) {
            sockets.channels.values().forEach(ZMQ.Socket::close);
            sockets.context.term();
            throw refusal;
        }
    }

    /** Returns the sockets of all channels. */
    Map<Channel, ZMQ.Socket> channels() {
        return channels;
    }

    /** Returns the socket whose every message is to be sent back as it came. */
    ZMQ.Socket heartbeat() {
        return heartbeat;
    }

    /** Ends the transport once every socket is closed. A thread that waits at a socket fails, and must close it. */
    void end() {
        context.term();
    }

    private ZMQ.Socket router(int port) {
        ZMQ.Socket socket = context.socket(SocketType.ROUTER);
        socket.setRouterHandover(true); // a front end that comes back after a lost connection takes its place
        return bound(socket, port);
    }

    private ZMQ.Socket broadcast(int port) {
        ZMQ.Socket socket = context.socket(SocketType.XPUB);
        socket.setXpubVerbose(true); // every front end is welcomed, not only the first
        return bound(socket, port);
    }

    private ZMQ.Socket bound(ZMQ.Socket socket, int port) {
        socket.setHWM(0); // with a limit, messages beyond it vanish, even the one that says idle
        socket.setLinger(LINGER_MILLISECONDS);
        socket.setMaxMsgSize(LARGEST_FRAME);
        socket.setIPv6(file.address().contains("["));
        if (file.curve().wanted()) {
            socket.setCurveServer(true);
            socket.setCurvePublicKey(ZMQ.Curve.z85Decode(file.curve().publicKey()));
            socket.setCurveSecretKey(ZMQ.Curve.z85Decode(file.curve().secretKey()));
        }
        String address = file.address() + ":" + port;
        try {
            socket.bind(address);
            return socket;
        } catch (ZMQException taken) {
            socket.close();
            throw new Refusal(
                    ServerProblem.PORT_TAKEN,
                    "The front end asks the kernel to listen at " + address,
                    "A kernel can listen only at an address of this machine where no other program listens",
                    "Start the kernel again from the front end, which will choose other ports");
        }
    }
}

package headrace.kernel.outside;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;

/** Finds a port at which nothing listens. */
final class FreePort {
    private FreePort() {}

    static int next() {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}

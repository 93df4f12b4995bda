package headrace.kernel.server;

import com.google.gson.Gson;
import headrace.kernel.history.History;
import headrace.kernel.message.Identity;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import headrace.kernel.wire.ConnectionFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;

/** A kernel that serves in this process, with one front end connected to it. */
final class Served implements AutoCloseable {
    private static final String ADDRESS = "tcp://127.0.0.1";

    private final int[] ports = freePorts();
    private final String key = UUID.randomUUID().toString();
    private final ByteArrayOutputStream log = new ByteArrayOutputStream();
    private final Kernel kernel;
    private final Thread thread;
    private final FrontEnd frontEnd;

    private Served(Supplier<Session> maker, History history) {
        PrintStream err = new PrintStream(log, true, StandardCharsets.UTF_8);
        kernel = new Kernel(connectionFile(ports, key), identity(), history, err);
        thread = new Thread(() -> serve(maker));
        thread.start();
        frontEnd = new FrontEnd(ADDRESS, ports, key);
    }

    private void serve(Supplier<Session> maker) {
        try {
            kernel.serve(maker);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    /** Serves a session whose cells are Groovy. */
    static Served groovy() {
        return new Served(GroovySession::new, History.none());
    }

    /** Serves this session. */
    static Served session(Supplier<Session> maker) {
        return new Served(maker, History.none());
    }

    /** Serves this session with a history. */
    static Served session(Supplier<Session> maker, History history) {
        return new Served(maker, history);
    }

    FrontEnd frontEnd() {
        return frontEnd;
    }

    /** Connects another front end. */
    FrontEnd another() {
        return new FrontEnd(ADDRESS, ports, key);
    }

    int[] ports() {
        return ports.clone();
    }

    Kernel kernel() {
        return kernel;
    }

    /** Returns what the kernel has told whoever runs it. */
    String log() {
        return log.toString(StandardCharsets.UTF_8);
    }

    /** Waits until the kernel has ended. */
    void awaitEnd() {
        try {
            thread.join();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    static Identity identity() {
        return new Identity(
                "1.2.3", new Identity.Language("groovy", "5.1", "text/x-groovy", ".groovy"), "A banner", Map.of());
    }

    /** Returns ports at which nothing listens. */
    static int[] freePorts() {
        int[] ports = new int[5];
        ServerSocket[] held = new ServerSocket[5];
        try {
            for (int i = 0; i < 5; i++) {
                held[i] = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
                ports[i] = held[i].getLocalPort();
            }
            for (ServerSocket socket : held) {
                socket.close();
            }
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return ports;
    }

    /** Returns the fields of a connection file for ports in the order shell, iopub, stdin, control, heartbeat. */
    static Map<String, Object> fields(int[] ports, String key) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("transport", "tcp");
        fields.put("ip", "127.0.0.1");
        fields.put("shell_port", ports[0]);
        fields.put("iopub_port", ports[1]);
        fields.put("stdin_port", ports[2]);
        fields.put("control_port", ports[3]);
        fields.put("hb_port", ports[4]);
        fields.put("key", key);
        fields.put("signature_scheme", "hmac-sha256");
        fields.put("kernel_name", "headrace");
        return fields;
    }

    private static ConnectionFile connectionFile(int[] ports, String key) {
        try {
            Path file = Files.createTempFile("connection", ".json");
            Files.writeString(file, new Gson().toJson(fields(ports, key)));
            ConnectionFile read = ConnectionFile.read(file);
            Files.delete(file);
            return read;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() {
        frontEnd.close();
        kernel.end();
        awaitEnd();
    }
}

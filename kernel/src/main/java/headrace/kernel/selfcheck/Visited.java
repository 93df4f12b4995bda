package headrace.kernel.selfcheck;

import headrace.kernel.wire.ConnectionFile;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A kernel in a process of its own, started as a front end starts it. What it leaves behind goes with it. */
final class Visited implements AutoCloseable {
    private static final int PATIENCE_SECONDS = 120;

    private final Path folder;
    private final Path printed;
    private final ConnectionFile connection;
    private final Process process;

    private Visited(Path folder, List<String> command) throws IOException {
        this.folder = folder;
        printed = folder.resolve("printed.txt");
        Path file = folder.resolve("connection.json");
        Files.writeString(file, connectionFile());
        connection = ConnectionFile.read(file);
        List<String> filled = command.stream()
                .map(argument -> argument.replace("{connection_file}", file.toString()))
                .toList();
        ProcessBuilder builder =
                new ProcessBuilder(filled).redirectErrorStream(true).redirectOutput(printed.toFile());
        // what is run here is nobody's history, but to keep one is part of what is tried
        builder.environment().put("HEADRACE_HISTORY", folder.resolve("history").toString());
        builder.environment().remove("JPY_PARENT_PID");
        process = builder.start();
    }

    /**
     * Starts a kernel.
     *
     * @param command the command that starts it, with {@code {connection_file}} where the file is to stand
     */
    static Visited start(List<String> command) throws IOException {
        Path folder = Files.createTempDirectory("headrace-visit");
        try {
            return new Visited(folder, command);
        } catch (IOException | RuntimeException failed) {
            clear(folder);
            throw failed;
        }
    }

    ConnectionFile connection() {
        return connection;
    }

    boolean isAlive() {
        return process.isAlive();
    }

    /** Waits for the end, and returns whether it came and was a good one. */
    boolean ends() throws InterruptedException {
        return process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS) && process.exitValue() == 0;
    }

    /** Returns the last lines that the process has printed. */
    List<String> lastLines(int most) throws IOException {
        List<String> lines = new String(Files.readAllBytes(printed), StandardCharsets.UTF_8)
                .lines()
                .toList();
        return lines.subList(Math.max(0, lines.size() - most), lines.size());
    }

    @Override
    public void close() throws IOException {
        process.destroyForcibly();
        clear(folder);
    }

    private static void clear(Path folder) throws IOException {
        List<Path> all;
        try (Stream<Path> found = Files.walk(folder)) {
            all = found.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : all) {
            Files.deleteIfExists(path);
        }
    }

    private static String connectionFile() throws IOException {
        List<ServerSocket> held = new ArrayList<>();
        StringBuilder file = new StringBuilder("{");
        try {
            for (String name : List.of("shell_port", "iopub_port", "stdin_port", "control_port", "hb_port")) {
                ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
                held.add(socket);
                file.append('"')
                        .append(name)
                        .append("\":")
                        .append(socket.getLocalPort())
                        .append(',');
            }
        } finally {
            for (ServerSocket socket : held) {
                socket.close();
            }
        }
        return file.append("\"ip\":\"127.0.0.1\",\"key\":\"")
                .append(UUID.randomUUID())
                .append("\"}")
                .toString();
    }
}

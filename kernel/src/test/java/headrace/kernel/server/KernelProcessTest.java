package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import headrace.kernel.outside.InstalledKernel;
import headrace.kernel.outside.Outside;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.zeromq.ZMQ;

/** The kernel as the process that a front end starts. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class KernelProcessTest {
    private static final String NO_SIGNALS = "Windows has no signals that a test could send";

    @TempDir
    Path folder;

    private Path connectionFile(Map<String, Object> fields) throws IOException {
        return Files.writeString(folder.resolve("connection.json"), new Gson().toJson(fields));
    }

    private Outside.Ended refused(Map<String, Object> fields) throws IOException {
        return refused(connectionFile(fields));
    }

    private Outside.Ended refused(Path file) {
        return InstalledKernel.program(folder, "kernel", "--connection", file.toString());
    }

    @Test
    void a_taken_port_ends_it_with_a_sentence_and_a_code_of_its_own() throws IOException {
        int[] ports = Served.freePorts();
        try (ServerSocket other = new ServerSocket(ports[3], 1, InetAddress.getLoopbackAddress())) {
            Outside.Ended ended = refused(Served.fields(ports, "k"));
            assertEquals(6, ended.code());
            assertTrue(ended.printed().contains("tcp://127.0.0.1:" + other.getLocalPort()), ended.printed());
            assertTrue(ended.printed().contains("[port-taken]"), ended.printed());
        }
    }

    @Test
    void a_transport_that_it_does_not_speak_ends_it_with_a_sentence_and_a_code() throws IOException {
        Map<String, Object> fields = Served.fields(Served.freePorts(), "k");
        fields.put("transport", "ipc");
        Outside.Ended ended = refused(fields);
        assertEquals(3, ended.code());
        assertTrue(ended.printed().contains("speaks tcp only"), ended.printed());
    }

    @Test
    void a_signature_that_it_cannot_make_ends_it_with_a_sentence_and_a_code() throws IOException {
        Map<String, Object> fields = Served.fields(Served.freePorts(), "k");
        fields.put("signature_scheme", "hmac-sealing-wax");
        Outside.Ended ended = refused(fields);
        assertEquals(3, ended.code());
        assertTrue(ended.printed().contains("[unsupported-signature]"), ended.printed());
    }

    @Test
    void a_file_that_is_missing_or_no_connection_file_ends_it_with_a_sentence_and_a_code() throws IOException {
        Map<String, Object> halfAPair = Served.fields(Served.freePorts(), "k");
        halfAPair.put("curve_publickey", "0".repeat(40));
        for (String text :
                List.of("", "{}", "[1]", "{\"shell_port\": 70000}", new Gson().toJson(halfAPair), "\u0000")) {
            Outside.Ended ended = refused(Files.writeString(folder.resolve("bad.json"), text));
            assertEquals(3, ended.code(), text);
            assertTrue(ended.printed().contains("[unreadable-connection-file]"), ended.printed());
        }
        assertEquals(3, refused(folder.resolve("missing.json")).code());
    }

    @Test
    void it_ends_with_zero_when_its_front_end_asks_for_that() throws Exception {
        try (Running running = new Running(Map.of())) {
            running.frontEnd.run("Thread.start { while (true) {} }; null");
            String id = running.frontEnd.command("shutdown_request", Map.of("restart", false));
            running.frontEnd.commandReply(id);
            assertEquals(0, running.end());
        }
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = NO_SIGNALS)
    void an_interrupt_signal_stops_the_cell_and_not_the_process() throws Exception {
        try (Running running = new Running(Map.of())) {
            FrontEnd frontEnd = running.frontEnd;
            String cell = frontEnd.ask("execute_request", Map.of("code", "println 'begun'; while (true) {}"));
            frontEnd.awaitEvent(event -> event.answers(cell) && event.type().equals("stream"));
            running.signal("INT");
            assertEquals("error", frontEnd.reply(cell).text("status"));
            assertEquals("ok", frontEnd.run("1 + 1").reply().text("status"));
        }
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = NO_SIGNALS)
    void a_signal_to_end_ends_it_with_zero_while_a_cell_runs() throws Exception {
        try (Running running = new Running(Map.of())) {
            FrontEnd frontEnd = running.frontEnd;
            String cell = frontEnd.ask("execute_request", Map.of("code", "println 'begun'; while (true) {}"));
            frontEnd.awaitEvent(event -> event.answers(cell) && event.type().equals("stream"));
            running.signal("TERM");
            assertEquals(0, running.end());
        }
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = NO_SIGNALS)
    void it_ends_by_itself_when_the_process_that_started_it_is_gone() throws Exception {
        Process starter = new ProcessBuilder("sleep", "600").start();
        try (Running running = new Running(Map.of("JPY_PARENT_PID", Long.toString(starter.pid())))) {
            assertEquals("ok", running.frontEnd.run("1").reply().text("status"));
            starter.destroyForcibly().waitFor();
            assertEquals(0, running.end());
        }
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = NO_SIGNALS)
    void it_ends_by_itself_if_the_process_that_started_it_is_gone_before_it_is_up() throws Exception {
        Process gone = new ProcessBuilder("true").start();
        gone.waitFor();
        String file = connectionFile(Served.fields(Served.freePorts(), "k")).toString();
        List<String> command = new ArrayList<>(List.of("sh", "-c", "\"$@\" >/dev/null 2>&1 & echo $!", "sh"));
        command.addAll(InstalledKernel.command("kernel", "--connection", file));
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("JPY_PARENT_PID", Long.toString(gone.pid()));
        Process shell = builder.start();
        String printed = new String(shell.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        ProcessHandle orphan = ProcessHandle.of(Long.parseLong(printed.strip())).orElseThrow();
        try {
            orphan.onExit().get(Running.HANGING_SECONDS, TimeUnit.SECONDS);
        } finally {
            orphan.destroyForcibly();
        }
    }

    @Test
    void the_secret_is_told_nowhere() throws Exception {
        try (Running running = new Running(Map.of())) {
            running.frontEnd.sendRaw(List.of(new byte[] {1}));
            assertEquals("ok", running.frontEnd.run("1").reply().text("status"));
            running.signal("TERM");
            running.end();
            assertTrue(running.printed().contains("too few frames"), running.printed());
            assertTrue(!running.printed().contains(Running.KEY), running.printed());
        }
    }

    @Test
    void an_encrypted_connection_serves_who_has_the_key_and_nobody_else() throws Exception {
        ZMQ.Curve.KeyPair pair = ZMQ.Curve.generateKeyPair();
        Map<String, Object> curve = Map.of("curve_publickey", pair.publicKey, "curve_secretkey", pair.secretKey);
        try (Running running = new Running(Map.of(), curve, pair.publicKey)) {
            assertEquals("ok", running.frontEnd.run("1").reply().text("status"));
            try (FrontEnd stranger = FrontEnd.unwelcomed("tcp://127.0.0.1", running.ports, Running.KEY)) {
                stranger.ask("execute_request", Map.of("code", "stranger = 1"));
                assertEquals(
                        "false",
                        running.frontEnd
                                .run("binding.hasVariable('stranger')")
                                .event("execute_result")
                                .content()
                                .getAsJsonObject("data")
                                .get("text/plain")
                                .getAsString());
            }
        }
    }

    /** A kernel in a process of its own, with one front end connected to it. */
    private final class Running implements AutoCloseable {
        private static final String KEY = "0b1c2d3e-secret-of-the-test";
        private static final int HANGING_SECONDS = 60;

        private final int[] ports = Served.freePorts();
        private final Path printed = folder.resolve("printed.txt");
        private final Process process;
        private final FrontEnd frontEnd;

        Running(Map<String, String> environment) throws IOException {
            this(environment, Map.of(), "");
        }

        Running(Map<String, String> environment, Map<String, Object> more, String curveKey) throws IOException {
            Map<String, Object> fields = Served.fields(ports, KEY);
            fields.putAll(more);
            String file = connectionFile(fields).toString();
            ProcessBuilder builder = new ProcessBuilder(
                            Outside.hearing(InstalledKernel.command("kernel", "--connection", file)))
                    .redirectErrorStream(true)
                    .redirectOutput(printed.toFile());
            builder.environment().putAll(environment);
            process = builder.start();
            frontEnd = new FrontEnd("tcp://127.0.0.1", ports, KEY, curveKey);
        }

        void signal(String name) throws Exception {
            new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                    .start()
                    .waitFor();
        }

        int end() throws InterruptedException {
            assertTrue(process.waitFor(HANGING_SECONDS, TimeUnit.SECONDS), "it does not end");
            return process.exitValue();
        }

        String printed() throws IOException {
            return Files.readString(printed);
        }

        @Override
        public void close() {
            frontEnd.close();
            process.destroyForcibly();
        }
    }
}

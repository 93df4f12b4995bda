package headrace.kernel.session.java;

import com.sun.tools.attach.AgentInitializationException;
import com.sun.tools.attach.AgentLoadException;
import com.sun.tools.attach.AttachNotSupportedException;
import com.sun.tools.attach.VirtualMachine;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.instrument.Instrumentation;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;

/**
 * The right to change loaded classes, asked for when a class is first defined anew.
 *
 * <p>Java gives it to an agent. One that is named at the start would cost every start some time and the archive of
 * classes its use; so this process lets one in when it needs it, through another that ends at once.
 */
public final class Redefining {
    private static final long PATIENCE_SECONDS = 20;
    private static volatile Instrumentation given;
    private static boolean asked;

    private Redefining() {}

    /** Takes the right. Called by Java. */
    public static void agentmain(String arguments, Instrumentation instrumentation) {
        given = instrumentation;
    }

    /** Lets the agent into another process: its number and the agent's file are the arguments. */
    public static void main(String[] arguments)
            throws IOException, AttachNotSupportedException, AgentLoadException, AgentInitializationException {
        VirtualMachine other = VirtualMachine.attach(arguments[0]);
        other.loadAgent(arguments[1]);
        other.detach();
    }

    /** Returns the right, if Java gives it. */
    static synchronized Optional<Instrumentation> instrumentation() {
        if (!asked) {
            asked = true;
            try {
                ask();
            } catch (IOException | URISyntaxException | RuntimeException e) {
                return Optional.empty(); // classes are then replaced, and their variables reset
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                asked = false;
            }
        }
        return Optional.ofNullable(given);
    }

    private static void ask() throws IOException, InterruptedException, URISyntaxException {
        Path agent = Files.createTempFile("headrace", ".jar");
        try {
            writeAgent(agent);
            Path java = Path.of(System.getProperty("java.home"), "bin", "java");
            URI place = Redefining.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI();
            Process other = new ProcessBuilder(
                            java.toString(),
                            "-XX:+UseSerialGC",
                            "-XX:TieredStopAtLevel=1",
                            "-cp",
                            Path.of(place).toString(),
                            Redefining.class.getName(),
                            String.valueOf(ProcessHandle.current().pid()),
                            agent.toString())
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            if (!other.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                other.destroyForcibly();
            }
        } finally {
            Files.deleteIfExists(agent);
        }
    }

    /** Writes a jar that holds nothing but the name of this class, which Java finds where the program is. */
    private static void writeAgent(Path file) throws IOException {
        Manifest manifest = new Manifest();
        Attributes main = manifest.getMainAttributes();
        main.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        main.putValue("Agent-Class", Redefining.class.getName());
        main.putValue("Can-Redefine-Classes", "true");
        try (OutputStream out = Files.newOutputStream(file);
                JarOutputStream jar = new JarOutputStream(out, manifest)) {
            jar.finish();
        }
    }
}

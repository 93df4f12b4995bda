package headrace.kernel.outside;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** Programs from outside this project that a test drives. Debian's Python packages live with Debian's Python. */
public final class Outside {
    public static final Path PYTHON = Path.of("/usr/bin/python3");

    /** Ends a test whose program hangs; no figure of any kind. */
    private static final int HANGING_SECONDS = 240;

    private static final Path PACKAGES = Path.of("/usr/lib/python3/dist-packages");

    private Outside() {}

    /** What a program printed, and how it ended. */
    public record Ended(int code, String printed) {
        /** Fails unless the program ended well. */
        public Ended well() {
            assertTrue(code == 0, () -> "Ended with " + code + " and said:\n" + printed);
            return this;
        }
    }

    /**
     * Needs a package of Debian. Without it the test skips and says its name, and fails where {@code CI} is
     * {@code true}.
     *
     * @param file a file or folder of the package's own
     */
    public static void needs(String debian, Path file) {
        needed(file, "Debian's package " + debian);
    }

    /** Needs something that a script of ours makes; without it the test skips or fails likewise. */
    public static void needsMade(String script, Path file) {
        needed(file, "what kernel/" + script + " makes");
    }

    private static void needed(Path file, String what) {
        if (Files.exists(file)) {
            return;
        }
        if ("true".equals(System.getenv("CI"))) {
            fail("This test needs " + what + ", and CI is true");
        }
        Assumptions.abort("This test needs " + what);
    }

    /** Needs a package of Debian that is a module of Python. */
    public static void needsModule(String debian, String module) {
        needs(debian, PACKAGES.resolve(module));
    }

    /** Returns a script beside the tests. */
    public static String script(String name) {
        Path script = Path.of("src", "test", "python", name).toAbsolutePath();
        assertTrue(Files.exists(script), () -> script + " is missing");
        return script.toString();
    }

    /**
     * Returns a command that hears interrupts also where the tests were started in the background, whose processes
     * ignore them. Where the system has no way to say so the command stays as it is.
     */
    public static List<String> hearing(List<String> command) {
        try {
            Process asked = new ProcessBuilder("env", "--default-signal=INT", "true").start();
            if (asked.waitFor() != 0) {
                return command;
            }
        } catch (IOException without) {
            return command;
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
        List<String> heard = new ArrayList<>(List.of("env", "--default-signal=INT"));
        heard.addAll(command);
        return heard;
    }

    /** Runs a program to its end, with these variables besides its own. */
    public static Ended run(Path folder, Map<String, String> environment, String... command) {
        try {
            Path printed = Files.createTempFile("printed", ".txt");
            ProcessBuilder builder = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(printed.toFile());
            builder.environment().putAll(environment);
            Process process = builder.start();
            boolean ended = process.waitFor(HANGING_SECONDS, TimeUnit.SECONDS);
            if (!ended) {
                process.descendants().forEach(ProcessHandle::destroyForcibly);
                process.destroyForcibly();
            }
            String text = Files.readString(printed, StandardCharsets.UTF_8);
            Files.delete(printed);
            assertTrue(ended, () -> command[0] + " hangs; it said:\n" + text);
            return new Ended(process.exitValue(), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }
}

package headrace.kernel.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("soak")
@DisplayNameGeneration(ReplaceUnderscores.class)
class MutatedNotebooksTest {
    private static final int TRIALS = Boolean.getBoolean("headrace.soak") ? 20_000 : 1_000;

    private static final Pattern TOKEN = Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"|-?\\d+(?:\\.\\d+)?|true|false|null");

    private static final List<String> TOKENS = List.of(
            "null",
            "true",
            "0",
            "-1",
            "4.5",
            "1e400",
            "\"\"",
            "\"code\"",
            "\"a,b\"",
            "[]",
            "[1]",
            "[\"x\", \"x\"]",
            "{}",
            "{\"image/png\": 1}",
            "\"\\ud800\"",
            "[[[]]]");

    private static final String VALIDATE = """
            import sys, pathlib, nbformat
            count = 0
            for path in sorted(pathlib.Path(sys.argv[1]).glob('*.ipynb')):
                try:
                    nbformat.validate(nbformat.reads(path.read_text(encoding='utf-8'), as_version=nbformat.NO_CONVERT))
                except Exception as e:
                    print(path.name, str(e)[:400])
                    sys.exit(1)
                count += 1
            print(count)
            """;

    @TempDir
    Path folder;

    @Test
    void a_mutated_notebook_is_read_or_refused_and_what_is_read_is_written_the_same_twice() {
        for (int seed = 0; seed < TRIALS; seed++) {
            byte[] bytes = mutated(seed);
            try {
                Optional<Notebook> notebook = readOrRefused(bytes);
                notebook.ifPresent(read -> {
                    String text = read.toJson();
                    assertEquals(text, Notebook.of(text, "again.ipynb").toJson());
                });
            } catch (RuntimeException | StackOverflowError e) {
                fail("Seed " + seed + " is neither read nor refused", e);
            }
        }
    }

    @Test
    void what_is_written_keeps_the_official_schema_of_the_format_4_5() throws IOException, InterruptedException {
        requireValidator();
        int written = 0;
        for (int seed = 0; seed < TRIALS; seed++) {
            Optional<Notebook> notebook = readOrRefused(mutated(seed));
            if (notebook.isPresent()) {
                Files.writeString(
                        folder.resolve(seed + ".ipynb"), notebook.get().toJson());
                written++;
            }
        }
        assertTrue(written > TRIALS / 10, "Only " + written + " of the mutated notebooks were read");
        assertEquals(written + "\n", python(VALIDATE, folder.toString()));
    }

    private static Optional<Notebook> readOrRefused(byte[] bytes) {
        try {
            return Optional.of(Notebook.of(NotebookText.of(bytes, "m.ipynb"), "m.ipynb"));
        } catch (Refusal refusal) {
            assertTrue(refusal.place().isPresent(), refusal.getMessage());
            assertTrue(refusal.problem() instanceof NotebookProblem, refusal.getMessage());
            return Optional.empty();
        }
    }

    /** Changes one to three things in a good notebook: a token, or a stretch of its bytes. */
    private static byte[] mutated(int seed) {
        Random random = new Random(seed);
        byte[] bytes = NotebookTest.resource().getBytes(StandardCharsets.UTF_8);
        for (int i = random.nextInt(3); i >= 0; i--) {
            bytes = random.nextInt(4) > 0 ? otherToken(bytes, random) : otherBytes(bytes, random);
        }
        return bytes;
    }

    private static byte[] otherToken(byte[] bytes, Random random) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        List<MatchResult> tokens = TOKEN.matcher(text).results().toList();
        if (tokens.isEmpty()) {
            return bytes;
        }
        MatchResult token = tokens.get(random.nextInt(tokens.size()));
        String other = TOKENS.get(random.nextInt(TOKENS.size()));
        return (text.substring(0, token.start()) + other + text.substring(token.end()))
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] otherBytes(byte[] bytes, Random random) {
        int from = random.nextInt(bytes.length);
        int to = Math.min(bytes.length, from + random.nextInt(random.nextBoolean() ? 4 : 400));
        List<Byte> changed = new ArrayList<>();
        for (int i = 0; i < bytes.length; i++) {
            if (i < from || i >= to) {
                changed.add(bytes[i]);
            }
        }
        for (int i = random.nextInt(4); i > 0; i--) {
            changed.add(Math.min(from, changed.size()), (byte) random.nextInt(256));
        }
        byte[] result = new byte[changed.size()];
        for (int i = 0; i < result.length; i++) {
            result[i] = changed.get(i);
        }
        return result;
    }

    private static void requireValidator() throws IOException, InterruptedException {
        boolean present = Files.isExecutable(Path.of("/usr/bin/python3"))
                && python("import nbformat", "").isEmpty();
        if (!present && "true".equals(System.getenv("CI"))) {
            fail("The schema of the format was not tested: /usr/bin/python3 with python3-nbformat is missing");
        }
        Assumptions.assumeTrue(
                present, "Skipped: the schema of the format needs /usr/bin/python3 with python3-nbformat");
    }

    private static String python(String program, String argument) throws IOException, InterruptedException {
        Process process = new ProcessBuilder("/usr/bin/python3", "-c", program, argument)
                .redirectErrorStream(true)
                .start();
        process.getOutputStream().close();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(10, TimeUnit.MINUTES), "The validator does not end");
        return printed;
    }
}

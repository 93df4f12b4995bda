package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.groovy.GroovySession;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs every block of Java in the guide and compares what it prints with the text block below it. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class JavaDocumentationTest {
    private static final Path PROJECT = Path.of("..").toAbsolutePath().normalize();
    private static final Pattern BLOCK =
            Pattern.compile("^```java\n(.*?)^```\n.*?^```text\n(.*?)^```", Pattern.DOTALL | Pattern.MULTILINE);

    @Test
    void each_block_of_java_prints_what_the_guide_says(@TempDir Path folder) throws IOException {
        String page = Files.readString(PROJECT.resolve("docs/guide/notebook.md"));
        Matcher block = BLOCK.matcher(page);
        int blocks = 0;
        while (block.find()) {
            blocks++;
            assertEquals(block.group(2), printed(block.group(1), folder));
        }
        assertTrue(blocks > 0, "the guide has a block of Java");
    }

    private static String printed(String code, Path folder) {
        StringBuilder text = new StringBuilder();
        Output output = new Output() {
            @Override
            public void print(String some) {
                text.append(some);
            }

            @Override
            public void printError(String some) {
                text.append(some);
            }

            @Override
            public void show(MimeBundle bundle, Optional<String> id) {}

            @Override
            public void update(MimeBundle bundle, String id) {}

            @Override
            public void clear(boolean wait) {}

            @Override
            public void progress(HowFar far) {}

            @Override
            public void progressEnded() {}

            @Override
            public Optional<String> ask(String prompt, boolean secret) {
                return Optional.empty();
            }
        };
        try (GroovySession session = GroovySession.in(PROJECT, folder, Language.JAVA)) {
            Outcome outcome = session.run(code, true, output);
            assertFalse(outcome instanceof Outcome.Failed, outcome::toString);
        }
        return text.toString();
    }
}

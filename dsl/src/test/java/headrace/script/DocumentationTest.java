package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Runs every Groovy block of the documentation and compares what it prints with the text block below it. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class DocumentationTest {
    private static final Path ROOT = Path.of("..");
    private static final Pattern BLOCK = Pattern.compile("^```groovy\n(.*?)^```\n(.*?)(?=^```groovy\n|\\z)", flags());
    private static final Pattern PRINTED = Pattern.compile("^```text\n(.*?)^```", flags());

    private static int flags() {
        return Pattern.DOTALL | Pattern.MULTILINE;
    }

    static Stream<Path> pages() throws IOException {
        try (Stream<Path> docs = Files.walk(ROOT.resolve("docs"))) {
            List<Path> pages =
                    docs.filter(page -> page.toString().endsWith(".md")).toList();
            return Stream.concat(Stream.of(ROOT.resolve("README.md")), pages.stream())
                    .filter(DocumentationTest::hasScript);
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void each_script_of_a_page_prints_what_the_page_says(Path page) throws IOException {
        Matcher block = BLOCK.matcher(Files.readString(page));
        Binding session = new Binding();
        while (block.find()) {
            Matcher printed = PRINTED.matcher(block.group(2));
            String expected = printed.find() ? printed.group(1) : "";
            assertEquals(expected, run(block.group(1), session), () -> page + ":\n" + block.group(1));
        }
    }

    @Test
    void the_readme_and_the_guide_are_among_the_pages() throws IOException {
        List<String> names = pages().map(page -> page.getFileName().toString()).toList();
        assertTrue(names.containsAll(List.of("README.md", "1-from-test-to-strategy.md")), names::toString);
    }

    private static boolean hasScript(Path page) {
        try {
            return Files.readString(page).contains("```groovy\n");
        } catch (IOException e) {
            throw new AssertionError("Could not read " + page, e);
        }
    }

    /** The scripts of a page follow one another, as the cells of a notebook do. */
    private static String run(String script, Binding page) {
        ScriptFolder.of(ROOT, Path.of("target", "documentation")).choose();
        StringWriter out = new StringWriter();
        page.setVariable("out", out);
        new GroovyShell(page, ScriptLanguage.configuration()).evaluate(script);
        return out.toString();
    }
}

package headrace.kernel.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import headrace.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Keeps the problems of all modules and the troubleshooting page together. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class TroubleshootingTest {
    private static final String HEADING = "## ";

    @Test
    void the_sections_are_the_problems_each_once() throws IOException {
        List<String> anchors = problems().stream().map(Problem::anchor).sorted().toList();
        List<String> headings = page().stream()
                .filter(line -> line.startsWith(HEADING))
                .map(line -> line.substring(HEADING.length()))
                .sorted()
                .toList();
        assertEquals(String.join("\n", anchors), String.join("\n", headings));
    }

    @Test
    void each_section_says_something() throws IOException {
        List<String> page = page();
        for (int i = 0; i < page.size(); i++) {
            if (page.get(i).startsWith(HEADING)) {
                assertFalse(page.get(i + 2).isBlank() || page.get(i + 2).startsWith(HEADING), page.get(i));
            }
        }
    }

    private static List<String> page() throws IOException {
        return Files.readAllLines(Path.of("..", "docs", "troubleshooting.md"));
    }

    private static List<Problem> problems() {
        return new ClassFileImporter()
                .withImportOption(new DoNotIncludeTests()).importPackages("headrace").stream()
                        .filter(type -> type.isEnum() && type.isAssignableTo(Problem.class))
                        .map(JavaClass::reflect)
                        .flatMap(type -> Arrays.stream(type.getEnumConstants()))
                        .map(Problem.class::cast)
                        .toList();
    }
}

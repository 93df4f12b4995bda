package headrace.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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

/**
 * Keeps the problems of this module and the troubleshooting page together. The test of the same name in the kernel,
 * which sees all modules, looks for sections without a problem too.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class TroubleshootingTest {
    @Test
    void each_problem_has_its_section() throws IOException {
        List<String> headings = Files.readAllLines(Path.of("..", "docs", "troubleshooting.md"));
        List<String> missing = problems().stream()
                .map(problem -> "## " + problem.anchor())
                .filter(heading -> !headings.contains(heading))
                .toList();
        assertEquals(List.of(), missing);
    }

    @Test
    void no_two_problems_share_a_name() {
        List<String> names = problems().stream().map(Problem::name).sorted().toList();
        assertTrue(names.contains("UNKNOWN_UNIT"), "The scan must find the problems at all");
        assertEquals(names.stream().distinct().toList(), names);
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

package headrace.kernel.headless.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.RunParameters;
import headrace.kernel.notebook.Cell;
import headrace.kernel.session.groovy.GroovySession;
import headrace.lesson.Check.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the course together: its index, and what each lesson has to have. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CourseTest {
    private static final Path NOTEBOOKS = Path.of("..", "notebooks");
    private static final Pattern ROW = Pattern.compile(
            "^\\| (\\d+) \\| \\[(.+?)]\\((.+?\\.ipynb)\\) \\| .+ \\| (\\d+) \\| (.+) \\|$", Pattern.MULTILINE);

    @TempDir
    Path folder;

    static List<Path> lessons() throws IOException {
        try (Stream<Path> all = Files.list(NOTEBOOKS)) {
            return all.filter(file -> file.toString().endsWith(".ipynb"))
                    .sorted()
                    .toList();
        }
    }

    private static List<MatchResult> rows() throws IOException {
        return ROW.matcher(Files.readString(NOTEBOOKS.resolve("README.md")))
                .results()
                .toList();
    }

    private static String text(Path lesson) {
        return RunInput.read(lesson).notebook().cells().stream()
                .filter(Cell.Markdown.class::isInstance)
                .map(Cell::source)
                .collect(Collectors.joining("\n"));
    }

    @Test
    void the_index_has_every_lesson_once_and_no_other() throws IOException {
        List<String> files =
                lessons().stream().map(file -> file.getFileName().toString()).toList();
        assertEquals(files, rows().stream().map(row -> row.group(3)).sorted().toList());
        assertTrue(files.size() >= 10, "a course has at least ten lessons");
    }

    @Test
    void the_index_counts_up_calls_each_lesson_by_its_title_and_needs_only_earlier_ones() throws IOException {
        int number = 0;
        for (MatchResult row : rows()) {
            number++;
            assertEquals(number, Integer.parseInt(row.group(1)));
            assertTrue(text(NOTEBOOKS.resolve(row.group(3))).startsWith("# " + row.group(2) + "\n"), row.group(2));
            for (String needed : row.group(5).split("\\D+")) {
                assertTrue(needed.isEmpty() || Integer.parseInt(needed) < number, row.group());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void each_lesson_has_an_aim_an_experiment_an_exercise_and_says_that_it_is_an_estimate(Path lesson) {
        String text = text(lesson);
        assertTrue(text.contains("*Aim"), "an aim");
        assertTrue(text.contains("\n## ") || text.contains("# "), "headings");
        assertTrue(text.contains("## Exercise"), "an exercise");
        assertTrue(text.toLowerCase(Locale.ROOT).contains("estimate") || text.contains("Caution"), "a caution");
        long code = RunInput.read(lesson).notebook().cells().stream()
                .filter(RunInput::runs)
                .count();
        assertTrue(code >= 4, "an experiment");
    }

    @Test
    void the_index_names_the_lessons_in_which_a_lecturer_moves_a_slider() throws IOException {
        List<Integer> moving = new ArrayList<>();
        for (MatchResult row : rows()) {
            if (Files.readString(NOTEBOOKS.resolve(row.group(3))).contains("whatIf(")) {
                moving.add(Integer.valueOf(row.group(1)));
            }
        }
        assertTrue(moving.size() >= 3, moving::toString);
        String named = moving.stream().map(String::valueOf).collect(Collectors.joining(", "));
        int last = named.lastIndexOf(", ");
        assertTrue(
                Files.readString(NOTEBOOKS.resolve("README.md"))
                        .contains("Lessons " + named.substring(0, last) + " and " + named.substring(last + 2)
                                + " have sliders"),
                named);
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void no_lesson_has_an_answer_in_the_clear(Path lesson) {
        RunInput input = RunInput.read(lesson);
        for (Cell cell : input.notebook().cells()) {
            if (RunInput.runs(cell)) {
                ExerciseText text = Sealing.text(cell, input.language());
                Map<String, String> seals =
                        text.names().stream().distinct().collect(Collectors.toMap(name -> name, name -> "a seal"));
                assertEquals(cell.source(), text.sealed(seals, java.util.Set.of()));
            }
        }
    }

    @Test
    void the_sealed_exercises_of_the_course_wait_for_their_answers() throws IOException {
        int waiting = 0;
        for (Path lesson : lessons()) {
            RunInput input = RunInput.read(lesson);
            if (Files.readString(lesson).contains("not-secret-")) {
                Grading grading = Grading.of(
                        input,
                        new RunParameters(Map.of()),
                        Duration.ofSeconds(60),
                        each -> GroovySession.in(NOTEBOOKS.toAbsolutePath().normalize(), folder, each.language()));
                assertEquals(List.of(), grading.failures(), lesson::toString);
                assertEquals(grading.marks().size(), grading.count(Verdict.NOT_ANSWERED), lesson::toString);
                waiting += grading.marks().size();
            }
        }
        assertTrue(waiting >= 5, waiting + " exercises");
    }
}

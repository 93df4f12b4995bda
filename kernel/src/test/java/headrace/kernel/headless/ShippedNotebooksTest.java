package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.headless.page.Edition;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.session.Fault;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.groovy.GroovySession;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Runs the notebooks that ship, as they are and with other pumps in the first cell of the first one. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ShippedNotebooksTest {
    private static final Path PROJECT = Path.of("..").toAbsolutePath().normalize();
    private static final Path FIRST = PROJECT.resolve("notebooks/first-pump.ipynb");
    private static final String PUMP = "demo-data/pumps/heron-65.csv";

    /** The last word of a refusal: the name of its section in the troubleshooting page. */
    private static final Pattern REASON = Pattern.compile("\\. .+\\. .+\\. \\[[a-z-]+]$", Pattern.DOTALL);

    /** What a page may be at most, its what-ifs included. */
    private static final long MOST_BYTES = 2_000_000;

    private static final Pattern FROM_ELSEWHERE =
            Pattern.compile("(?:src|href|action)=\"(?:https?:)?//|url\\([\"']?https?:");

    @TempDir
    Path folder;

    static Stream<Path> notebooks() throws IOException {
        return files("notebooks", ".ipynb");
    }

    static Stream<Path> pumps() throws IOException {
        return files("demo-data/pumps", ".csv");
    }

    @ParameterizedTest
    @MethodSource("notebooks")
    void each_notebook_that_ships_runs_to_its_end_and_its_page_stands_alone(Path notebook) throws IOException {
        RunInput input = RunInput.read(notebook);
        ResultFolder results = ResultFolder.of(input, Optional.of(folder.resolve("out")));
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        TerminalView view = new TerminalView(new PrintStream(told, true, StandardCharsets.UTF_8), false, 80);
        Edition edition = new Edition("1", "17", "5", LocalDate.of(2026, 3, 14));
        try (GroovySession session = GroovySession.in(notebook.getParent(), folder, input.language())) {
            assertEquals(
                    Ending.COMPLETE,
                    new HeadlessRun(input, results, view, edition, session).run(),
                    () -> told.toString(StandardCharsets.UTF_8));
        }
        String page = Files.readString(results.page());
        assertTrue(Files.size(results.page()) < MOST_BYTES, Files.size(results.page()) + " bytes");
        assertFalse(FROM_ELSEWHERE.matcher(page).find(), "nothing of it comes from elsewhere");
        assertEquals(
                List.of(),
                found("<img [^>]*>", page)
                        .filter(each -> !each.matches(".* alt=\"[^\"]+\".*"))
                        .toList(),
                "each picture is said in words");
        assertEquals(
                List.of(),
                found("(?<=href=\"#)[^\"]+", page)
                        .filter(each -> !page.contains("id=\"" + each + "\""))
                        .toList(),
                "each line of the contents leads somewhere");
        assertTrue(page.contains(input.sha256()), "the hash of its input");
    }

    private static Stream<String> found(String pattern, String text) {
        return Pattern.compile(pattern).matcher(text).results().map(MatchResult::group);
    }

    @ParameterizedTest
    @MethodSource("pumps")
    void with_each_pump_that_ships_the_first_notebook_runs_or_refuses_with_a_reason(Path pump) throws IOException {
        assertRunsOrRefuses(pump);
    }

    /** Pumps of all sizes, a few of them able to do the duty of the notebook. */
    @Test
    void with_made_up_pumps_the_first_notebook_runs_or_refuses_with_a_reason() throws IOException {
        int ran = 0;
        for (int seed = 1; seed <= 12; seed++) {
            Path pump = folder.resolve("made-up-" + seed + ".csv");
            Files.writeString(pump, madeUp(seed));
            ran += assertRunsOrRefuses(pump) ? 1 : 0;
        }
        assertTrue(ran > 0, "not one of the made-up pumps could do the duty");
    }

    private boolean assertRunsOrRefuses(Path pump) throws IOException {
        String text = Files.readString(FIRST).replace(PUMP, pump.toString());
        Optional<Fault> fault = fault(text, Language.GROOVY);
        fault.ifPresent(it -> assertTrue(REASON.matcher(it.message()).find(), it.lines()::toString));
        return fault.isEmpty();
    }

    /** Returns the first fault of a notebook's cells, run in order until then. */
    private Optional<Fault> fault(String notebook, Language language) {
        try (GroovySession session = GroovySession.in(PROJECT.resolve("notebooks"), folder, language)) {
            for (Cell cell : Notebook.of(notebook, "notebook").cells()) {
                if (cell instanceof Cell.Code code
                        && session.run(code.source(), true, Output.UNHEARD) instanceof Outcome.Failed failed) {
                    return Optional.of(failed.fault());
                }
            }
            return Optional.empty();
        }
    }

    /** Head and power of a pump of random size, 9 to 12 points with 0.3 % scatter. */
    private static String madeUp(int seed) {
        Random random = new Random(seed);
        double best = 30 + 60 * random.nextDouble();
        double shutOff = 14 + 16 * random.nextDouble();
        double atNoFlow = best * shutOff / 600;
        int points = 9 + random.nextInt(4);
        StringBuilder file =
                new StringBuilder("# name: Made up " + seed + "\n# speed: 1450 rpm\n# liquid: water 20 °C\n"
                        + "# source: invented by a test\nflow [m3/h], head [m], shaft power [kW]\n");
        for (int i = 0; i < points; i++) {
            double x = 1.4 * i / (points - 1);
            double head = shutOff * (1 - 0.2 * x * x) * (1 + 0.003 * random.nextGaussian());
            double power = atNoFlow * (1 + 1.5 * x) * (1 + 0.003 * random.nextGaussian());
            file.append(String.format(Locale.ROOT, "%.2f, %.3f, %.4f%n", x * best, head, power));
        }
        return file.toString();
    }

    private static Stream<Path> files(String inside, String ending) throws IOException {
        try (Stream<Path> all = Files.list(PROJECT.resolve(inside))) {
            List<Path> found = all.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
            assertTrue(!found.isEmpty(), inside);
            return found.stream();
        }
    }
}

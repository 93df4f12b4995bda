package headrace.kernel.install;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InstallationTest {
    @TempDir
    Path folder;

    private Installation installation() {
        return new Installation(folder.resolve("with a space").resolve("headrace"));
    }

    private Installation.Program program() throws IOException {
        Path jar = Files.writeString(folder.resolve("one.jar"), "bytes");
        Path classes = Files.createDirectories(folder.resolve("classes"));
        return new Installation.Program(
                Path.of("/a jdk/bin/java"),
                List.of(jar, classes),
                List.of("Main", "kernel", "{connection_file}"),
                "Groovy");
    }

    private static JsonObject description(Installation installation) throws IOException {
        return JsonParser.parseString(Files.readString(installation.folder().resolve("kernel.json")))
                .getAsJsonObject();
    }

    @Test
    void the_description_starts_the_program_by_absolute_paths_each_an_argument_of_its_own() throws IOException {
        Installation installation = installation();
        installation.put(program());
        JsonArray argv = description(installation).getAsJsonArray("argv");
        List<String> command = new ArrayList<>();
        argv.forEach(argument -> command.add(argument.getAsString()));
        assertEquals("/a jdk/bin/java", command.get(0));
        int classPath = command.indexOf("-cp") + 1;
        assertEquals(
                installation.folder().resolve("lib/one.jar")
                        + System.getProperty("path.separator")
                        + folder.resolve("classes"),
                command.get(classPath));
        assertEquals(List.of("Main", "kernel", "{connection_file}"), command.subList(classPath + 1, command.size()));
        assertEquals("bytes", Files.readString(installation.folder().resolve("lib/one.jar")));
    }

    @Test
    void a_front_end_is_told_to_interrupt_by_message() throws IOException {
        Installation installation = installation();
        installation.put(program());
        JsonObject description = description(installation);
        assertEquals("message", description.get("interrupt_mode").getAsString());
        assertEquals("groovy", description.get("language").getAsString());
        assertFalse(description.get("display_name").getAsString().isBlank());
    }

    @Test
    void a_second_time_takes_the_place_of_the_first() throws IOException {
        Installation installation = installation();
        installation.put(program());
        Files.writeString(installation.folder().resolve("left-over"), "x");
        installation.put(program());
        assertFalse(Files.exists(installation.folder().resolve("left-over")));
        assertTrue(Files.exists(installation.folder().resolve("kernel.json")));
        assertFalse(Files.exists(installation.folder().resolveSibling("headrace.new")));
    }

    private Installation.Program jarsOnly() throws IOException {
        Path jar = Files.writeString(folder.resolve("one.jar"), "bytes");
        return new Installation.Program(Path.of("/jdk/bin/java"), List.of(jar), List.of("Main"), "Groovy");
    }

    /** Writes what Java would, where the command says. */
    private static boolean recorded(List<String> command) throws IOException {
        String option = command.get(1);
        if (option.contains("AtExit=") || option.contains("Output=")) {
            Files.writeString(Path.of(option.substring(option.indexOf('=') + 1)), "archive");
        }
        return true;
    }

    @Test
    void after_a_trial_that_goes_well_the_kernel_starts_from_what_java_wrote_down() throws Exception {
        Installation installation = installation();
        installation.put(jarsOnly());
        assertTrue(installation.quicken(jarsOnly(), InstallationTest::recorded));
        String option = description(installation).getAsJsonArray("argv").get(1).getAsString();
        assertTrue(option.endsWith("=" + installation.folder().resolve("classes.archive")), option);
        assertTrue(option.startsWith("-XX:SharedArchiveFile") || option.startsWith("-XX:AOTCache="), option);
    }

    @Test
    void after_a_trial_that_fails_the_kernel_starts_as_before() throws Exception {
        Installation installation = installation();
        installation.put(jarsOnly());
        JsonObject before = description(installation);
        assertFalse(installation.quicken(jarsOnly(), command -> false));
        assertFalse(installation.quicken(
                jarsOnly(),
                command -> command.get(1).contains("AtExit") || command.get(1).contains("Output")));
        assertFalse(installation.quicken(
                jarsOnly(),
                command -> recorded(command)
                        && (command.get(1).contains("AtExit=") || command.get(1).contains("Output="))));
        assertEquals(before, description(installation));
        assertFalse(Files.exists(installation.folder().resolve("classes.archive")));
    }

    @Test
    void folders_of_classes_are_not_written_down() throws Exception {
        Installation installation = installation();
        installation.put(program());
        assertFalse(installation.quicken(program(), command -> {
            throw new AssertionError("no trial is of use");
        }));
    }

    @Test
    void what_is_removed_leaves_nothing_and_can_be_removed_again() throws IOException {
        Installation installation = installation();
        assertFalse(installation.remove());
        installation.put(program());
        assertTrue(installation.remove());
        assertFalse(Files.exists(installation.folder()));
        assertFalse(installation.remove());
    }

    @Test
    void a_folder_that_cannot_be_written_is_refused() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "x");
        Installation installation = new Installation(file.resolve("kernels").resolve("headrace"));
        Installation.Program program = program();
        Refusal refusal = assertThrows(Refusal.class, () -> installation.put(program));
        assertEquals(InstallProblem.KERNELS_NOT_WRITABLE, refusal.problem());
    }
}

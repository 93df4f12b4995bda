package headrace.kernel.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launcher in a copy of the project's folder with spaces in its path, with a Java and a Maven that only tell. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "The launcher of this test is a POSIX script")
class LauncherTest {
    private static final Instant LONG_AGO = Instant.parse("2020-01-01T00:00:00Z");

    /** Where Surefire runs: the folder of the module. */
    private static final Path LAUNCHER = Path.of("bin/headrace");

    @TempDir
    Path folder;

    private Path project;
    private Path launcher;
    private Path jar;
    private final Map<String, String> environment = new HashMap<>();

    @BeforeEach
    void lay_out_a_project() throws IOException {
        project = folder.resolve("a project's folder");
        launcher = project.resolve("kernel/bin/headrace");
        jar = project.resolve("kernel/target/headrace/lib/headrace-kernel-1.jar");
        Files.createDirectories(launcher.getParent());
        Files.copy(LAUNCHER, launcher);
        executable(launcher);
        for (String source :
                List.of("pom.xml", "dsl/pom.xml", "dsl/src/main/A.java", "kernel/pom.xml", "kernel/src/main/B.java")) {
            Path file = project.resolve(source);
            Files.createDirectories(file.getParent());
            Files.writeString(file, "");
            Files.setLastModifiedTime(file, FileTime.from(LONG_AGO));
        }
        Path tools = Files.createDirectories(folder.resolve("tools"));
        script(
                tools.resolve("mvn"),
                "echo built >> '" + folder + "/builds'; pwd > '" + folder + "/where'; echo noise;"
                        + " mkdir -p kernel/target/headrace/lib; touch kernel/target/headrace/lib/headrace-kernel-1.jar");
        java("17.0.9");
        environment.put("PATH", tools + ":/usr/bin:/bin");
        environment.put("JAVA_HOME", folder.resolve("a jdk").toString());
    }

    @Test
    void arguments_and_the_exit_code_pass_through_unchanged() throws Exception {
        Ended ended = launch(launcher, "run", "two words.ipynb", "", "$HOME * 'x'");
        assertEquals(37, ended.code(), ended.printed());
        assertTrue(
                ended.printed().endsWith("[headrace.kernel.cli.Main]\n[run]\n[two words.ipynb]\n[]\n[$HOME * 'x']\n"),
                ended.printed());
        assertTrue(
                ended.printed().contains("[-cp]\n[" + project + "/kernel/target/headrace/lib/*]\n"), ended.printed());
        assertTrue(ended.printed().contains("[-Dheadrace.colour=false]"), ended.printed());
    }

    @Test
    void it_builds_once_says_so_in_one_line_and_builds_again_when_a_source_is_newer() throws Exception {
        Ended first = launch(launcher);
        assertTrue(first.printed().startsWith("headrace: building"), first.printed());
        assertFalse(first.printed().contains("noise"), first.printed());
        assertEquals(project + "\n", Files.readString(folder.resolve("where")));
        Ended second = launch(launcher);
        assertFalse(second.printed().contains("building"), second.printed());
        for (String source : List.of("dsl/src/main/A.java", "kernel/src/main/B.java", "kernel/pom.xml")) {
            Files.setLastModifiedTime(jar, FileTime.from(LONG_AGO.plusSeconds(60)));
            Files.setLastModifiedTime(project.resolve(source), FileTime.from(LONG_AGO.plusSeconds(120)));
            assertTrue(launch(launcher).printed().contains("building"), source);
            Files.setLastModifiedTime(project.resolve(source), FileTime.from(LONG_AGO));
        }
        assertEquals(4, Files.readAllLines(folder.resolve("builds")).size());
    }

    @Test
    void a_build_that_fails_is_shown_with_a_sentence_and_nothing_is_started() throws Exception {
        script(folder.resolve("tools/mvn"), "echo 'cannot find symbol'; exit 1");
        Ended ended = launch(launcher, "run", "a.ipynb");
        assertEquals(5, ended.code());
        assertTrue(ended.printed().contains("cannot find symbol"), ended.printed());
        assertTrue(ended.printed().contains("The build failed"), ended.printed());
        assertFalse(ended.printed().contains("Main"), ended.printed());
    }

    @Test
    void without_maven_it_says_what_to_install() throws Exception {
        Files.delete(folder.resolve("tools/mvn"));
        environment.put("PATH", onlyBasicTools());
        Ended ended = launch(launcher);
        assertEquals(5, ended.code());
        assertTrue(ended.printed().contains("no mvn on the path"), ended.printed());
    }

    @Test
    void a_fast_start_is_prepared_once_a_build_and_used_from_then_on() throws Exception {
        Files.createDirectories(project.resolve("notebooks"));
        Files.writeString(project.resolve("notebooks/first-pump.ipynb"), "{}");
        script(
                folder.resolve("a jdk/bin/java"),
                "for each in \"$@\"; do case $each in -XX:ArchiveClassesAtExit=*) echo classes > \"${each#*=}\"; echo x >> '"
                        + folder + "/prepared';; esac; printf '[%s]\\n' \"$each\"; done; exit 37");
        Path archive = project.resolve("kernel/target/headrace/start-17.0.9.jsa");
        Ended first = launch(launcher, "--version");
        assertTrue(first.printed().contains("preparing a fast start"), first.printed());
        assertFalse(first.printed().contains("first-pump"), first.printed());
        assertTrue(first.printed().contains("[-XX:SharedArchiveFile=" + archive + "]"), first.printed());
        assertFalse(launch(launcher).printed().contains("preparing"));
        Files.setLastModifiedTime(jar, FileTime.from(Instant.now().plusSeconds(5)));
        assertTrue(launch(launcher).printed().contains("preparing"));
        assertEquals(2, Files.readAllLines(folder.resolve("prepared")).size());
    }

    @Test
    void where_a_fast_start_cannot_be_prepared_it_starts_all_the_same() throws Exception {
        Files.createDirectories(project.resolve("notebooks"));
        Files.writeString(project.resolve("notebooks/first-pump.ipynb"), "{}");
        assertTrue(launch(launcher).printed().contains("preparing"));
        Ended second = launch(launcher);
        assertEquals(37, second.code());
        assertFalse(second.printed().contains("preparing"), second.printed());
        assertFalse(second.printed().contains("SharedArchiveFile"), second.printed());
    }

    @Test
    void a_jdk_that_is_not_supported_is_refused_with_those_that_are() throws Exception {
        for (String version : List.of("11.0.2", "1.8.0_392", "24", "26-ea")) {
            java(version);
            Ended ended = launch(launcher);
            assertEquals(5, ended.code(), version);
            assertTrue(ended.printed().contains("JDK 17, 21 or 25"), ended.printed());
        }
        for (String version : List.of("21.0.1", "25")) {
            java(version);
            assertEquals(37, launch(launcher).code(), version);
        }
    }

    @Test
    void a_jdk_without_a_file_of_its_version_is_asked() throws Exception {
        Files.delete(folder.resolve("a jdk/release"));
        script(folder.resolve("a jdk/bin/java"), "echo 'openjdk version \"21.0.1\" 2023-10-17' >&2; exit 37");
        assertEquals(37, launch(launcher).code());
        script(folder.resolve("a jdk/bin/java"), "echo 'java version \"1.8.0_392\"' >&2; exit 37");
        assertEquals(5, launch(launcher).code());
    }

    @Test
    void a_java_home_without_java_and_no_java_at_all_are_told_apart() throws Exception {
        environment.put("JAVA_HOME", folder.resolve("nowhere").toString());
        assertTrue(launch(launcher).printed().contains("JAVA_HOME is " + folder.resolve("nowhere")));
        environment.remove("JAVA_HOME");
        environment.put("PATH", onlyBasicTools());
        Ended ended = launch(launcher);
        assertEquals(5, ended.code());
        assertTrue(ended.printed().contains("No java is on the path"), ended.printed());
    }

    @Test
    void java_is_found_on_the_path_through_a_link() throws Exception {
        environment.remove("JAVA_HOME");
        Files.createSymbolicLink(folder.resolve("tools/java"), folder.resolve("a jdk/bin/java"));
        assertEquals(37, launch(launcher).code());
    }

    @Test
    void a_link_to_the_launcher_and_the_search_path_find_the_project() throws Exception {
        Path link = Files.createSymbolicLink(folder.resolve("tools/headrace"), launcher);
        Path second = Files.createSymbolicLink(folder.resolve("tools/hr"), Path.of("headrace"));
        assertEquals(37, launch(link).code());
        assertEquals(37, launch(second).code());
        assertEquals(37, launch(Path.of("headrace")).code());
    }

    private void java(String version) throws IOException {
        Path home = folder.resolve("a jdk");
        Files.createDirectories(home.resolve("bin"));
        script(home.resolve("bin/java"), "for each in \"$@\"; do printf '[%s]\\n' \"$each\"; done; exit 37");
        Files.writeString(home.resolve("release"), "IMPLEMENTOR=\"x\"\nJAVA_VERSION=\"" + version + "\"\n");
    }

    /** A folder of the tools that the launcher needs, without any Java or Maven that this machine may have. */
    private String onlyBasicTools() throws IOException {
        Path basic = Files.createDirectories(folder.resolve("basic"));
        for (String tool :
                List.of("dirname", "readlink", "sed", "head", "find", "tail", "mkdir", "mktemp", "mv", "rm")) {
            Path bin = Path.of("/usr/bin", tool);
            script(basic.resolve(tool), "exec " + (Files.isExecutable(bin) ? bin : Path.of("/bin", tool)) + " \"$@\"");
        }
        return basic.toString();
    }

    private static void script(Path file, String body) throws IOException {
        Files.writeString(file, "#!/bin/sh\n" + body + "\n");
        executable(file);
    }

    private static void executable(Path file) throws IOException {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private record Ended(int code, String printed) {}

    private Ended launch(Path program, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("/bin/sh", "-c", "exec \"$@\"", "sh", program.toString()));
        command.addAll(List.of(arguments));
        Path printed = folder.resolve("printed.txt");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(Files.createDirectories(folder.resolve("else where")).toFile())
                .redirectErrorStream(true)
                .redirectOutput(printed.toFile());
        builder.environment().clear();
        builder.environment().putAll(environment);
        Process process = builder.start();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS), "The launcher does not end");
        return new Ended(process.exitValue(), Files.readString(printed));
    }
}

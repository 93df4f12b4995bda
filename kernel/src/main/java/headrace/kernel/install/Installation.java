package headrace.kernel.install;

import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The kernel in one of the folders where front ends look.
 *
 * <p>Jars are copied there, so that the kernel starts the same after the project was moved, cleaned or is being built
 * anew. Folders of classes, as a build has them, are referred to where they are.
 */
public final class Installation {
    /**
     * One collector thread, a heap that begins small and forgets soon what it can have again, the costly compiler only
     * for what is long busy, no word about the agent that changes a class which a cell defines anew, nor about an
     * archive that does not fit this Java any more, text as everywhere.
     */
    private static final List<String> OPTIONS = List.of(
            "-XX:+UseSerialGC",
            "-Xms64m",
            "-XX:SoftRefLRUPolicyMSPerMB=10",
            "-XX:Tier4InvocationThreshold=20000",
            "-XX:Tier4MinInvocationThreshold=2400",
            "-XX:Tier4CompileThreshold=60000",
            "-XX:+UnlockDiagnosticVMOptions",
            "-XX:-DisplayVMOutput",
            "-XX:CompileCommand=quiet",
            "-XX:+EnableDynamicAgentLoading",
            "-Xlog:disable",
            "-Xlog:all=error:stderr",
            "-Dfile.encoding=UTF-8",
            "-Djava.awt.headless=true");

    private static final String LIGHTLY = "lightly-compiled.json";

    private final Path folder;
    private final Path jars;

    /**
     * The program that serves as the kernel.
     *
     * @param java the command that starts Java
     * @param classPath its jars and folders of classes
     * @param arguments the main class and its arguments
     * @param language the name of the language of its cells
     */
    public record Program(Path java, List<Path> classPath, List<String> arguments, String language) {}

    /** Speaks of the kernel in this folder, whether it is there or not. */
    public Installation(Path folder) {
        this(folder.toAbsolutePath().normalize(), folder.toAbsolutePath().normalize());
    }

    private Installation(Path folder, Path jars) {
        this.folder = folder;
        this.jars = jars;
    }

    /** Speaks of a kernel of another name beside this one, which uses the jars of this one. */
    public Installation beside(String name) {
        return new Installation(folder.resolveSibling(name), jars);
    }

    /** Returns the folder. */
    public Path folder() {
        return folder;
    }

    /** Tries a command that starts the kernel, and says whether all went well. */
    public interface Trial {
        /** Starts the kernel by this command, uses it and ends it. */
        boolean goesWell(List<String> command) throws IOException, InterruptedException;
    }

    /** Makes the kernel known, in place of an earlier one. */
    public void put(Program program) {
        Path made = folder.resolveSibling(folder.getFileName() + ".new");
        try {
            delete(made);
            Files.createDirectories(made);
            List<String> command = command(program, classPath(program, made));
            Files.writeString(made.resolve("kernel.json"), new Description(command, program.language()).json());
            Files.writeString(made.resolve(LIGHTLY), LightlyCompiled.directives());
            delete(folder);
            Files.move(made, folder);
        } catch (IOException e) {
            throw notWritable(e);
        }
    }

    /**
     * Lets Java write down the classes that a trial of the kernel loads, so that it starts faster from now on.
     *
     * @return whether that worked; if not, the kernel starts as before
     */
    public boolean quicken(Program program, Trial trial) throws InterruptedException {
        if (!program.classPath().stream().allMatch(Files::isRegularFile)) {
            return false; // Java archives classes of jars only
        }
        Path archive = folder.resolve("classes.archive");
        boolean newer = Runtime.version().feature() >= 25;
        String record = (newer ? "-XX:AOTCacheOutput=" : "-XX:ArchiveClassesAtExit=") + archive;
        String use = (newer ? "-XX:AOTCache=" : "-XX:SharedArchiveFile=") + archive;
        List<String> command = command(program, installedClassPath(program));
        try {
            boolean recorded = trial.goesWell(with(record, command)) && Files.exists(archive);
            boolean works = recorded && trial.goesWell(with(use, command));
            if (works) {
                Files.writeString(
                        folder.resolve("kernel.json"), new Description(with(use, command), program.language()).json());
            } else {
                Files.deleteIfExists(archive);
            }
            return works;
        } catch (IOException e) {
            throw notWritable(e);
        }
    }

    /** Returns the command by which front ends start the kernel, if it is known and its description can be read. */
    public Optional<List<String>> known() {
        try {
            String description = Files.readString(folder.resolve("kernel.json"));
            List<String> command = new ArrayList<>();
            JsonParser.parseString(description)
                    .getAsJsonObject()
                    .getAsJsonArray("argv")
                    .forEach(argument -> command.add(argument.getAsString()));
            return command.isEmpty() ? Optional.empty() : Optional.of(command);
        } catch (IOException
                | JsonParseException
                | IllegalStateException
                | UnsupportedOperationException
                | ClassCastException
                | NullPointerException unreadable) {
            return Optional.empty();
        }
    }

    private List<String> command(Program program, String classPath) {
        List<String> command = new ArrayList<>();
        command.add(program.java().toString());
        command.addAll(OPTIONS);
        command.add("-XX:CompilerDirectivesFile=" + folder.resolve(LIGHTLY));
        command.add("-cp");
        command.add(classPath);
        command.addAll(program.arguments());
        return command;
    }

    private static List<String> with(String option, List<String> command) {
        List<String> longer = new ArrayList<>(command);
        longer.add(1, option);
        return longer;
    }

    /**
     * Makes the kernel unknown.
     *
     * @return whether it was known
     */
    public boolean remove() {
        try {
            boolean known = Files.exists(folder);
            delete(folder);
            return known;
        } catch (IOException e) {
            throw notWritable(e);
        }
    }

    /** Copies the jars into a folder that will become this one. */
    private String classPath(Program program, Path made) throws IOException {
        if (jars.equals(folder)) {
            Path lib = Files.createDirectories(made.resolve("lib"));
            for (Path entry : program.classPath()) {
                if (Files.isRegularFile(entry)) {
                    Files.copy(entry, lib.resolve(entry.getFileName()));
                }
            }
        }
        return installedClassPath(program);
    }

    private String installedClassPath(Program program) {
        return program.classPath().stream()
                .map(entry -> Files.isRegularFile(entry)
                        ? jars.resolve("lib").resolve(entry.getFileName()).toString()
                        : entry.toString())
                .collect(Collectors.joining(System.getProperty("path.separator")));
    }

    private static void delete(Path tree) throws IOException {
        if (!Files.exists(tree)) {
            return;
        }
        List<Path> all;
        try (Stream<Path> found = Files.walk(tree)) {
            all = found.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : all) {
            Files.delete(path);
        }
    }

    private Refusal notWritable(IOException e) {
        return new Refusal(
                InstallProblem.KERNELS_NOT_WRITABLE,
                "The kernel " + folder.getFileName() + " was to be written to or removed from " + folder
                        + ", which failed (" + e + ")",
                "Front ends find kernels in the user's own folder for Jupyter and below the prefixes of their"
                        + " environments",
                "Choose a folder that you can write with --prefix, or leave it out for your own folder");
    }
}

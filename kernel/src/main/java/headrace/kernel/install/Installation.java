package headrace.kernel.install;

import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The kernel in one of the folders where front ends look.
 *
 * <p>Jars are copied there, so that the kernel starts the same after the project was moved, cleaned or is being built
 * anew. Folders of classes, as a build has them, are referred to where they are.
 */
public final class Installation {
    private static final List<String> OPTIONS =
            List.of("-XX:+UseSerialGC", "-Xshare:auto", "-Dfile.encoding=UTF-8", "-Djava.awt.headless=true");

    private final Path folder;

    /**
     * The program that serves as the kernel.
     *
     * @param java the command that starts Java
     * @param classPath its jars and folders of classes
     * @param arguments the main class and its arguments
     */
    public record Program(Path java, List<Path> classPath, List<String> arguments) {}

    /** Speaks of the kernel in this folder, whether it is there or not. */
    public Installation(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
    }

    /** Returns the folder. */
    public Path folder() {
        return folder;
    }

    /** Makes the kernel known, in place of an earlier one. */
    public void put(Program program) {
        Path made = folder.resolveSibling(folder.getFileName() + ".new");
        try {
            delete(made);
            Files.createDirectories(made);
            String classPath = classPath(program, made);
            List<String> command = new ArrayList<>();
            command.add(program.java().toString());
            command.addAll(OPTIONS);
            command.add("-cp");
            command.add(classPath);
            command.addAll(program.arguments());
            Files.writeString(made.resolve("kernel.json"), new Description(command).json());
            delete(folder);
            Files.move(made, folder);
        } catch (IOException e) {
            throw notWritable(e);
        }
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
        List<String> entries = new ArrayList<>();
        Path jars = Files.createDirectories(made.resolve("lib"));
        for (Path entry : program.classPath()) {
            if (Files.isRegularFile(entry)) {
                Files.copy(entry, jars.resolve(entry.getFileName()));
                entries.add(folder.resolve("lib").resolve(entry.getFileName()).toString());
            } else {
                entries.add(entry.toString());
            }
        }
        return entries.stream().collect(Collectors.joining(System.getProperty("path.separator")));
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
                "The kernel headrace was to be written to or removed from " + folder + ", which failed (" + e + ")",
                "Front ends find kernels in the user's own folder for Jupyter and below the prefixes of their"
                        + " environments",
                "Choose a folder that you can write with --prefix, or leave it out for your own folder");
    }
}

package headrace.script;

import headrace.data.DataProblem;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Where a script finds its files and leaves its own, so that it does the same from wherever it is run.
 *
 * <p>A file to be read is looked for in the script's folder, then in the folders above it one by one, then in the
 * current folder of the program: a notebook in {@code notebooks/} finds {@code demo-data/} beside it. A file to be
 * written goes to one folder, which the door (notebook, terminal, headless run) has chosen.
 *
 * <p>Chosen for each thread and inherited by the threads it starts; the current folder until chosen.
 */
public final class ScriptFolder {
    private static final InheritableThreadLocal<ScriptFolder> CURRENT = new InheritableThreadLocal<>() {
        @Override
        protected ScriptFolder initialValue() {
            return new ScriptFolder(Path.of(""), Path.of(""));
        }
    };

    private final Path reads;
    private final Path writes;
    private final Set<Path> read = ConcurrentHashMap.newKeySet();

    private ScriptFolder(Path reads, Path writes) {
        this.reads = reads;
        this.writes = writes;
    }

    /**
     * Returns the folders of a script.
     *
     * @param reads the script's own folder
     * @param writes where its files go
     */
    public static ScriptFolder of(Path reads, Path writes) {
        return new ScriptFolder(reads, writes);
    }

    /** Makes this thread find and leave files here from now on. */
    public void choose() {
        CURRENT.set(this);
    }

    /** Returns the folders of this thread. */
    static ScriptFolder current() {
        return CURRENT.get();
    }

    /**
     * Returns where a file to be read is, and remembers that it was read.
     *
     * @throws Refusal with {@code FILE_NOT_FOUND} and where it was looked for
     */
    Path found(String name) {
        Path named = path(name);
        List<Path> folders = named.isAbsolute() ? List.of(named.getRoot()) : folders();
        for (Path folder : folders) {
            Path candidate = folder.resolve(named);
            if (Files.exists(candidate)) {
                read.add(candidate.toAbsolutePath().normalize());
                return candidate;
            }
        }
        throw new Refusal(
                        DataProblem.FILE_NOT_FOUND,
                        "Asked to read '" + name + "', which is not there",
                        "It was looked for in " + folders.get(0)
                                + (named.isAbsolute() ? "" : ", the folders above it, and the current folder"),
                        "Check the name letter by letter, and the folder that the script is in")
                .at(Place.of(name));
    }

    /** Returns where a file of this name is to be written. */
    Path target(String name) {
        return writes.toAbsolutePath().resolve(path(name)).normalize();
    }

    /** Returns whether the script has read this file. */
    boolean hasRead(Path file) {
        return read.contains(file.toAbsolutePath().normalize());
    }

    private List<Path> folders() {
        List<Path> folders = new ArrayList<>();
        for (Path folder = reads.toAbsolutePath().normalize(); folder != null; folder = folder.getParent()) {
            folders.add(folder);
        }
        folders.add(Path.of("").toAbsolutePath());
        return folders;
    }

    private static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new Refusal(
                    DataProblem.FILE_NOT_FOUND,
                    "Asked for a file called '" + name.replaceAll("\\p{Cntrl}", "?") + "'",
                    "No file can have such a name here",
                    "Use letters, digits, points, dashes and slashes");
        }
    }
}

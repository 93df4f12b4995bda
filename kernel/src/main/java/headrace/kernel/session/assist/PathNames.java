package headrace.kernel.session.assist;

import headrace.kernel.session.Completion.Candidate;
import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The files that a half-written path could name. */
final class PathNames {
    private static final String FOLDER = "folder";

    private PathNames() {}

    /**
     * Returns the folders, each with a slash, and then the files whose names go on from the path's last part.
     *
     * @param base the folder of the script; a path that is begun is looked for in the folders above it too, as the
     *     words that read a file do
     */
    static List<Candidate> after(String path, Path base) {
        int slash = path.lastIndexOf('/');
        String folder = path.substring(0, slash + 1);
        String begun = path.substring(slash + 1);
        Map<String, Candidate> found = new TreeMap<>();
        try {
            Path above = base.toAbsolutePath().normalize();
            do {
                list(above.resolve(folder), begun, found);
                above = path.isEmpty() || Path.of(folder).isAbsolute() ? null : above.getParent();
            } while (above != null);
        } catch (InvalidPathException e) {
            return List.of();
        }
        return found.values().stream()
                .sorted(Comparator.comparing(each -> each.signature().equals(FOLDER) ? 0 : 1))
                .toList();
    }

    private static void list(Path folder, String begun, Map<String, Candidate> into) {
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
            for (Path entry : entries) {
                String name = entry.getFileName().toString();
                boolean hidden = name.startsWith(".") && !begun.startsWith(".");
                if (name.startsWith(begun) && !hidden) {
                    boolean isFolder = Files.isDirectory(entry);
                    String text = isFolder ? name + "/" : name;
                    into.putIfAbsent(text, new Candidate(text, "path", isFolder ? FOLDER : "file"));
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            // A folder that is not there, or may not be looked into, offers nothing.
            return;
        }
    }
}

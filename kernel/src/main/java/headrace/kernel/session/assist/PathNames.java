package headrace.kernel.session.assist;

import headrace.kernel.session.Completion.Candidate;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The files that a half-written path could name. */
final class PathNames {
    private PathNames() {}

    /** Returns the folders, each with a slash, and then the files whose names go on from the path's last part. */
    static List<Candidate> after(String path) {
        int slash = path.lastIndexOf('/');
        String begun = path.substring(slash + 1);
        List<Candidate> found = new ArrayList<>();
        String folder = path.substring(0, slash + 1);
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(Path.of(folder.isEmpty() ? "." : folder))) {
            for (Path entry : entries) {
                String name = entry.getFileName().toString();
                boolean hidden = name.startsWith(".") && !begun.startsWith(".");
                if (name.startsWith(begun) && !hidden) {
                    boolean isFolder = Files.isDirectory(entry);
                    found.add(new Candidate(isFolder ? name + "/" : name, "path", isFolder ? "folder" : "file"));
                }
            }
        } catch (IOException | InvalidPathException e) {
            return List.of();
        }
        found.sort(Comparator.comparing(Candidate::signature).reversed().thenComparing(Candidate::text));
        return found;
    }
}

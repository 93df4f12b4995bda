package headrace.kernel.history;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Makes files and folders that nobody but their owner can read, where the system knows of such. */
final class Owned {
    private Owned() {}

    static void folder(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder.toAbsolutePath().getParent());
            Files.createDirectories(folder, only("rwx------"));
        }
    }

    /** Makes a file that is not there yet. */
    static void file(Path file) throws IOException {
        Files.createFile(file, only("rw-------"));
    }

    private static FileAttribute<?>[] only(String owner) {
        boolean known = FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
        return known
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(owner))}
                : new FileAttribute<?>[0];
    }
}

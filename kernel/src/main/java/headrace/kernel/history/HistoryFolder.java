package headrace.kernel.history;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * Where the cells of a user's sessions are kept.
 *
 * <p>Source: XDG Base Directory Specification 0.8, “user-specific state files”; other systems by their custom.
 */
public final class HistoryFolder {
    /** The variable that names another folder; empty, it keeps cells from being kept. */
    public static final String VARIABLE = "HEADRACE_HISTORY";

    private HistoryFolder() {}

    /**
     * Returns the folder for one user, if cells are to be kept.
     *
     * @param environment the variables of the process
     * @param system the name of the operating system as Java gives it
     * @param home the user's home folder
     */
    public static Optional<Path> ofUser(Map<String, String> environment, String system, Path home) {
        String chosen = environment.get(VARIABLE);
        if (chosen != null) {
            return chosen.isBlank() ? Optional.empty() : Optional.of(Path.of(chosen));
        }
        return Optional.of(state(environment, system, home).resolve("headrace").resolve("history"));
    }

    /**
     * Returns the file of the shell in a folder, made so that nobody but its owner can read it; nothing if that cannot
     * be.
     */
    public static Optional<Path> shellFile(Path folder) {
        Path file = folder.resolve("shell");
        try {
            Owned.folder(folder);
            if (!Files.exists(file)) {
                Owned.file(file);
            }
            return Files.isWritable(file) ? Optional.of(file) : Optional.empty();
        } catch (IOException cannotBeKept) {
            return Optional.empty();
        }
    }

    private static Path state(Map<String, String> environment, String system, Path home) {
        String local = environment.getOrDefault("LOCALAPPDATA", "");
        String state = environment.getOrDefault("XDG_STATE_HOME", "");
        if (system.startsWith("Windows") && !local.isEmpty()) {
            return Path.of(local);
        } else if (system.startsWith("Mac")) {
            return home.resolve("Library").resolve("Application Support");
        }
        return state.isEmpty() ? home.resolve(".local").resolve("state") : Path.of(state);
    }
}

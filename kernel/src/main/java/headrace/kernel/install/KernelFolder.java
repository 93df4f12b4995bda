package headrace.kernel.install;

import java.nio.file.Path;
import java.util.Map;

/**
 * Where front ends look for the description of this kernel.
 *
 * <p>Source: documentation of Jupyter, “Common directories and file locations”: data files of the user, by operating
 * system.
 */
public final class KernelFolder {
    private static final Path BELOW_DATA = Path.of("kernels", "headrace");

    private KernelFolder() {}

    /**
     * Returns the folder for one user.
     *
     * @param environment the variables of the process
     * @param system the name of the operating system as Java gives it
     * @param home the user's home folder
     */
    public static Path ofUser(Map<String, String> environment, String system, Path home) {
        return data(environment, system, home).resolve(BELOW_DATA);
    }

    /** Returns the folder below a prefix, such as that of an environment of Python. */
    public static Path below(Path prefix) {
        return prefix.resolve("share").resolve("jupyter").resolve(BELOW_DATA);
    }

    private static Path data(Map<String, String> environment, String system, Path home) {
        if (isSet(environment, "JUPYTER_DATA_DIR")) {
            return Path.of(environment.get("JUPYTER_DATA_DIR"));
        } else if (system.startsWith("Mac")) {
            return home.resolve("Library").resolve("Jupyter");
        } else if (system.startsWith("Windows") && isSet(environment, "APPDATA")) {
            return Path.of(environment.get("APPDATA")).resolve("jupyter");
        } else if (isSet(environment, "XDG_DATA_HOME")) {
            return Path.of(environment.get("XDG_DATA_HOME")).resolve("jupyter");
        }
        return home.resolve(".local").resolve("share").resolve("jupyter");
    }

    private static boolean isSet(Map<String, String> environment, String name) {
        return !environment.getOrDefault(name, "").isEmpty();
    }
}

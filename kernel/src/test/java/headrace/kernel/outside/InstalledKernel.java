package headrace.kernel.outside;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The kernel of this build, made known to front ends below a prefix of the test's own. */
public final class InstalledKernel {
    private final Path prefix;

    private InstalledKernel(Path prefix) {
        this.prefix = prefix;
    }

    /** Installs the kernel below a folder with the program's own command. */
    public static InstalledKernel below(Path prefix) {
        program(prefix, "install", "--prefix", prefix.toString()).well();
        return new InstalledKernel(prefix);
    }

    /** Runs the program of this build. */
    public static Outside.Ended program(Path folder, String... arguments) {
        return Outside.run(folder, Map.of(), command(arguments).toArray(String[]::new));
    }

    /** Returns the command that runs the program of this build. */
    public static List<String> command(String... arguments) {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = new ArrayList<>(List.of(java, "-cp", classPath(), "headrace.kernel.cli.Main"));
        command.addAll(List.of(arguments));
        return command;
    }

    /** The class path of the tests without the tests. */
    private static String classPath() {
        String separator = System.getProperty("path.separator");
        return Arrays.stream(System.getProperty("java.class.path").split(separator))
                .filter(entry -> !entry.endsWith("test-classes"))
                .collect(Collectors.joining(separator));
    }

    public Path description() {
        return prefix.resolve("share/jupyter/kernels/headrace/kernel.json");
    }

    /** Returns the variables with which a front end finds this kernel, and nothing of the user's. */
    public Map<String, String> environment() {
        Map<String, String> environment = new HashMap<>();
        environment.put("JUPYTER_PATH", prefix.resolve("share/jupyter").toString());
        environment.put("JUPYTER_DATA_DIR", prefix.resolve("data").toString());
        environment.put("JUPYTER_CONFIG_DIR", prefix.resolve("config").toString());
        environment.put("JUPYTER_RUNTIME_DIR", prefix.resolve("runtime").toString());
        environment.put("HOME", prefix.toString());
        environment.put("PYTHONDONTWRITEBYTECODE", "1");
        return environment;
    }
}

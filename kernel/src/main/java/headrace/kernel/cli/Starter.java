package headrace.kernel.cli;

import java.util.Map;
import java.util.Optional;

/** Finds the process that started this one and for which alone it runs. */
final class Starter {
    private static final long FIRST_PROCESS = 1;

    private Starter() {}

    /**
     * Returns the front end that started this kernel.
     *
     * <p>Front ends give their process's number in {@code JPY_PARENT_PID}, on Windows something else under the same
     * name. Without it, or where it names no process that can be seen, it is the parent process, unless that is the one
     * that adopts all orphans: then the kernel was left alone on purpose.
     */
    static Optional<ProcessHandle> process(Map<String, String> environment) {
        String given = environment.getOrDefault("JPY_PARENT_PID", "");
        boolean windows = System.getProperty("os.name").startsWith("Windows");
        Optional<ProcessHandle> named =
                windows || !given.matches("\\d{1,18}") ? Optional.empty() : ProcessHandle.of(Long.parseLong(given));
        return named.or(() -> ProcessHandle.current().parent()).filter(process -> process.pid() != FIRST_PROCESS);
    }
}

package headrace.kernel.cli;

import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** Watches the process that started this one and for which alone it runs. */
final class Starter {
    private static final long FIRST_PROCESS = 1;

    private Starter() {}

    /**
     * Returns whether the front end that started this kernel is gone, to be asked again and again.
     *
     * <p>Front ends give their process's number in {@code JPY_PARENT_PID}, on Windows something else under the same
     * name. A number that no process has any more means that the front end ended before the kernel was up, if the first
     * process has adopted the kernel; under another parent it is a number from outside of a container, and the parent
     * counts. Without a number the parent counts, unless that is the first process: then the kernel was left alone on
     * purpose.
     */
    static BooleanSupplier gone(Map<String, String> environment) {
        String given = environment.getOrDefault("JPY_PARENT_PID", "");
        boolean windows = System.getProperty("os.name").startsWith("Windows");
        boolean named = !windows && given.matches("\\d{1,18}");
        Optional<ProcessHandle> starter = named ? ProcessHandle.of(Long.parseLong(given)) : Optional.empty();
        Optional<ProcessHandle> watched =
                starter.or(() -> ProcessHandle.current().parent().filter(parent -> parent.pid() != FIRST_PROCESS));
        return watched.<BooleanSupplier>map(process -> () -> !process.isAlive()).orElse(() -> named);
    }
}

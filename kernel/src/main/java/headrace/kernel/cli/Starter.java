package headrace.kernel.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** Watches the process that started this one and for which alone it runs. */
final class Starter {
    private static final long FIRST_PROCESS = 1;
    private static final Path NAMESPACE = Path.of("/proc/self/ns/pid");

    /** The number by which Linux knows the processes of the machine itself. Source: include/linux/proc_ns.h. */
    private static final String OF_THE_MACHINE = "pid:[4026531836]";

    /**
     * What is known of this process.
     *
     * @param parent the process that stands above it now, which may have adopted it
     * @param windows whether the system is Windows
     * @param contained whether processes that it cannot see may have given it their number, as from outside of a
     *     container
     */
    record Place(Optional<ProcessHandle> parent, boolean windows, boolean contained) {
        static Place here() {
            boolean windows = System.getProperty("os.name").startsWith("Windows");
            return new Place(ProcessHandle.current().parent(), windows, isContained());
        }

        private static boolean isContained() {
            try {
                return !Files.readSymbolicLink(NAMESPACE).toString().equals(OF_THE_MACHINE);
            } catch (IOException | UnsupportedOperationException notLinux) {
                return false;
            }
        }
    }

    private Starter() {}

    /**
     * Returns whether the front end that started this kernel is gone, to be asked again and again.
     *
     * <p>Front ends give their process's number in {@code JPY_PARENT_PID}, on Windows something else under the same
     * name. A number that no process has any more means that the front end ended before the kernel was up, whoever has
     * adopted the kernel since. Only in a container it may be a number from outside, and then the parent counts, unless
     * that is the first process. Without a number the parent counts, unless that is the first process: then the kernel
     * was left alone on purpose.
     */
    static BooleanSupplier gone(Map<String, String> environment) {
        return gone(environment, Place.here());
    }

    static BooleanSupplier gone(Map<String, String> environment, Place place) {
        String given = environment.getOrDefault("JPY_PARENT_PID", "");
        boolean named = !place.windows() && given.matches("\\d{1,18}");
        Optional<ProcessHandle> starter = named ? ProcessHandle.of(Long.parseLong(given)) : Optional.empty();
        if (named && starter.isEmpty() && !place.contained()) {
            return () -> true;
        }
        Optional<ProcessHandle> watched =
                starter.or(() -> place.parent().filter(parent -> parent.pid() != FIRST_PROCESS));
        return watched.<BooleanSupplier>map(process -> () -> !process.isAlive()).orElse(() -> named);
    }
}

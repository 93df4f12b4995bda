package headrace.kernel.cli;

import headrace.kernel.install.KernelFolder;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Where a kernel is or will be known: to this user, or below a prefix. */
final class WhereInstalled {
    @Option(
            names = "--prefix",
            paramLabel = "DIR",
            description = "The environment whose front ends are to know the kernel, such as that of a Python"
                    + " environment. Default: all front ends of this user.")
    private Path prefix;

    Path folder() {
        return prefix == null
                ? KernelFolder.ofUser(
                        System.getenv(), System.getProperty("os.name"), Path.of(System.getProperty("user.home")))
                : KernelFolder.below(prefix);
    }
}

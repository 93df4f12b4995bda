package headrace.kernel.cli;

import headrace.kernel.install.Installation;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code headrace uninstall}: makes the kernel unknown to notebook front ends. */
@Command(
        name = "uninstall",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Makes the kernel unknown to notebook front ends again.",
        footerHeading = "%n",
        footer = "Ends with 0 if the kernel is not there any more, 4 if it cannot be removed.")
final class UninstallCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private WhereInstalled where;

    @Override
    public Integer call() {
        Installation installation = new Installation(where.folder());
        boolean known = installation.remove();
        spec.commandLine()
                .getOut()
                .println((known ? "Removed the kernel headrace from " : "There is no kernel headrace in ")
                        + installation.folder() + ".");
        return ExitCode.DONE;
    }
}

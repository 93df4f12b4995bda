package headrace.kernel.cli;

import headrace.kernel.install.Installation;
import headrace.kernel.session.Language;
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
        Installation groovy = new Installation(where.folder());
        for (Language language : Language.values()) {
            Installation installation = language == Language.GROOVY ? groovy : groovy.beside(language.kernel());
            boolean known = installation.remove();
            spec.commandLine()
                    .getOut()
                    .println((known ? "Removed the kernel " : "There is no kernel ") + language.kernel()
                            + (known ? " from " : " in ") + installation.folder() + ".");
        }
        return ExitCode.DONE;
    }
}

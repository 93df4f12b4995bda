package headrace.kernel.cli;

import headrace.kernel.install.Installation;
import headrace.kernel.selfcheck.Rehearsal;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code headrace install}: makes the kernel known to notebook front ends. */
@Command(
        name = "install",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Makes the kernel known to notebook front ends, for this user or below a prefix.",
        footerHeading = "%n",
        footer = "Ends with 0 if that was done, 4 if the folder cannot be written.")
final class InstallCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private WhereInstalled where;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        Installation installation = new Installation(where.folder());
        Installation.Program program = program();
        installation.put(program);
        out.println("Installed the kernel headrace into " + installation.folder() + ".");
        out.println("Trying it once, so that it starts faster from now on ...");
        out.println(
                installation.quicken(program, Rehearsal::play)
                        ? "It starts, and starts fast."
                        : "It starts as fast as its classes can be read.");
        out.println("Open a notebook front end and choose Headrace (Groovy) for a new notebook.");
        return ExitCode.DONE;
    }

    /** The very program that runs now. */
    private static Installation.Program program() {
        Path java = Path.of(System.getProperty("java.home"), "bin", isWindows() ? "java.exe" : "java");
        List<Path> classPath = Arrays.stream(
                        System.getProperty("java.class.path").split(System.getProperty("path.separator")))
                .map(entry -> Path.of(entry).toAbsolutePath().normalize())
                .toList();
        List<String> arguments = new ArrayList<>(List.of(Main.class.getName()));
        arguments.addAll(KernelCommand.COMMAND_LINE);
        return new Installation.Program(java, classPath, arguments);
    }

    private static boolean isWindows() {
        return System.getProperty("os.name").startsWith("Windows");
    }
}

package headrace.kernel.cli;

import headrace.kernel.install.Installation;
import headrace.kernel.selfcheck.Rehearsal;
import headrace.kernel.session.Language;
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

/** {@code headrace install}: makes the kernels of both languages known to notebook front ends. */
@Command(
        name = "install",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description =
                "Makes the kernels for Groovy and for Java known to notebook front ends, for this user or below a prefix.",
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
        Installation groovy = new Installation(where.folder());
        install(groovy, Language.GROOVY, out);
        install(groovy.beside(Language.JAVA.kernel()), Language.JAVA, out);
        out.println("Open a notebook front end and choose Headrace (Groovy) or Headrace (Java) for a new notebook.");
        return ExitCode.DONE;
    }

    private static void install(Installation installation, Language language, PrintWriter out)
            throws InterruptedException {
        Installation.Program program = program(language);
        installation.put(program);
        out.println("Installed the kernel " + language.kernel() + " into " + installation.folder() + ".");
        out.println("Trying it once, so that it starts faster from now on ...");
        List<String> cells = language == Language.JAVA ? Rehearsal.javaCells() : Rehearsal.cells();
        out.println(
                installation.quicken(program, command -> Rehearsal.play(command, cells))
                        ? "It starts, and starts fast."
                        : "It starts as fast as its classes can be read.");
    }

    /** The very program that runs now. */
    private static Installation.Program program(Language language) {
        Path java = Path.of(System.getProperty("java.home"), "bin", isWindows() ? "java.exe" : "java");
        List<Path> classPath = Arrays.stream(
                        System.getProperty("java.class.path").split(System.getProperty("path.separator")))
                .map(entry -> Path.of(entry).toAbsolutePath().normalize())
                .toList();
        List<String> arguments = new ArrayList<>(List.of(Main.class.getName()));
        arguments.addAll(KernelCommand.commandLine(language));
        return new Installation.Program(java, classPath, arguments, language.title());
    }

    private static boolean isWindows() {
        return System.getProperty("os.name").startsWith("Windows");
    }
}

package headrace.kernel.cli;

import headrace.kernel.headless.RunProblem;
import headrace.kernel.install.InstallProblem;
import headrace.kernel.server.ServerProblem;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program {@code headrace}. A command is a class of its own, named in {@link Command#subcommands()} here. */
@Command(
        name = "headrace",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Designs variable-speed pumping by script, from pump test to strategy comparison.",
        subcommands = {
            RunCommand.class,
            SealCommand.class,
            ShellCommand.class,
            InstallCommand.class,
            UninstallCommand.class,
            CheckCommand.class,
            KernelCommand.class,
            RehearseCommand.class,
            HelpCommand.class
        })
public final class Main implements Runnable {
    @Spec
    private CommandSpec spec;

    private Main() {}

    /** Runs a command and ends the process with its exit code. */
    public static void main(String[] arguments) {
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int code;
        try {
            code = KernelCommand.isAsked(arguments)
                    ? KernelCommand.atOnce(arguments, err)
                    : execute(new PrintWriter(System.out, true, StandardCharsets.UTF_8), err, arguments);
        } catch (Error e) {
            code = defect(e, err);
        }
        System.exit(code);
    }

    static int execute(PrintWriter out, PrintWriter err, String... arguments) {
        return new CommandLine(new Main())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setOut(out)
                .setErr(err)
                .setExecutionExceptionHandler((failure, command, parsed) -> told(failure, err))
                .execute(arguments);
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "A command is missing, such as: headrace run FILE");
    }

    static int told(Exception failure, PrintWriter err) {
        if (!(failure instanceof Refusal refusal)) {
            return defect(failure, err);
        }
        err.println(refusal.getMessage());
        return code(refusal.problem());
    }

    private static int code(Problem problem) {
        if (problem == RunProblem.WOULD_OVERWRITE
                || problem == RunProblem.RESULTS_NOT_WRITTEN
                || problem == InstallProblem.KERNELS_NOT_WRITABLE) {
            return ExitCode.NOT_WRITTEN;
        }
        return problem == ServerProblem.PORT_TAKEN ? ExitCode.PORT_TAKEN : ExitCode.BAD_FILE;
    }

    private static int defect(Throwable failure, PrintWriter err) {
        err.println("This is a defect of Headrace, not of your script. Please report it with the lines below.");
        failure.printStackTrace(err);
        return ExitCode.DEFECT;
    }
}

package headrace.kernel.cli;

import headrace.kernel.headless.Ending;
import headrace.kernel.headless.HeadlessRun;
import headrace.kernel.headless.ResultFolder;
import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.TerminalView;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code headrace run}: runs a notebook or a script and writes its results. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Runs a notebook or a script, prints its results, and writes the executed notebook and one page.",
        footerHeading = "%n",
        footer = {
            "A script is cut into cells at lines that begin with // %%%%; what follows on such a line is a"
                    + " heading. A script is a program: read it before you run it.",
            "",
            "Ends with 0 if every cell ran, 1 if a cell failed, 2 if the command is not understood, 3 if the file"
                    + " is absent or cannot be read, 4 if the results cannot be written, 130 if stopped with Ctrl-C."
        })
final class RunCommand implements Callable<Integer> {
    private static final Duration PATIENCE = Duration.ofSeconds(4);

    @Parameters(paramLabel = "FILE", description = "The notebook (.ipynb) or script (.groovy).")
    private Path file;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "The folder for the results. Default: headrace-out/ and the name of the file, in the"
                    + " current folder.")
    private Path output;

    @Override
    public Integer call() {
        RunInput input = RunInput.read(file);
        ResultFolder folder = ResultFolder.of(input, Optional.ofNullable(output));
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        TerminalView terminal = new TerminalView(out, Boolean.getBoolean("headrace.colour"));
        Path writes = folder.notebook().toAbsolutePath().getParent();
        try (Session session = GroovySession.in(file.toAbsolutePath().getParent(), writes, input.language())) {
            HeadlessRun run = new HeadlessRun(input, folder, terminal, Versions.edition(), session);
            Thread stopping = new Thread(() -> stop(run), "stop");
            Runtime.getRuntime().addShutdownHook(stopping);
            int code = code(run.run());
            leave(stopping);
            return code;
        }
    }

    private static void leave(Thread stopping) {
        try {
            Runtime.getRuntime().removeShutdownHook(stopping);
        } catch (IllegalStateException alreadyEnding) {
            return;
        }
    }

    /** Runs when the process is asked to end, or when a cell ends the process: not every cell has run then. */
    private static void stop(HeadlessRun run) {
        try {
            run.stop(PATIENCE);
        } finally {
            Runtime.getRuntime().halt(ExitCode.STOPPED);
        }
    }

    private static int code(Ending ending) {
        return switch (ending) {
            case COMPLETE -> ExitCode.DONE;
            case FAILED -> ExitCode.CELL_FAILED;
            case STOPPED -> ExitCode.STOPPED;
        };
    }
}

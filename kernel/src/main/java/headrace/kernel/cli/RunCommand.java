package headrace.kernel.cli;

import headrace.kernel.headless.Ending;
import headrace.kernel.headless.HeadlessRun;
import headrace.kernel.headless.ResultFolder;
import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.RunParameters;
import headrace.kernel.headless.TerminalView;
import headrace.kernel.headless.classroom.Grading;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

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
                    + " is absent or cannot be read, 4 if the results cannot be written, 124 if a cell took longer than it may,"
                    + " 130 if stopped with Ctrl-C."
        })
final class RunCommand implements Callable<Integer> {
    private static final Duration PATIENCE = Duration.ofSeconds(4);

    @Spec
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "FILE",
            description = "The notebook (.ipynb) or script (.groovy); with --grade also several.")
    private List<Path> files;

    private Path file;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "The folder for the results. Default: headrace-out/ and the name of the file, in the"
                    + " current folder.")
    private Path output;

    @Option(
            names = "--set",
            paramLabel = "NAME=VALUE",
            description =
                    "A value for a parameter, with its unit: --set \"minimumHead=35 %%\"; a list as [35 %%, 40 %%]. May be given"
                            + " several times.")
    private List<String> set = List.of();

    @Option(
            names = "--parameters",
            paramLabel = "FILE",
            description =
                    "A file of parameters, a line NAME = VALUE for each; # begins a remark. --set counts before it.")
    private Path parameters;

    @Option(
            names = "--timeout",
            paramLabel = "SECONDS",
            description = "How long a cell may take. Default: as long as it does.")
    private Double timeout;

    @Option(
            names = "--timings",
            description = "Says how long each cell took, also in the notebook and on the page. Without it the same run"
                    + " writes the same files.")
    private boolean timings;

    @Option(
            names = "--grade",
            description = "Runs notebooks with exercises and lists what is right, wrong and not answered, also as"
                    + " grades.csv in the folder for the results. A cell that fails, or takes more than 60 s, does not"
                    + " stop it. Ends with 0 unless a file is bad.")
    private boolean grade;

    @Override
    public Integer call() {
        HeadlessRun.Choices choices = choices();
        if (grade) {
            return new GradeRun(StandardOutput.view(), spec.commandLine().getErr())
                    .run(files, choices.parameters(), choices.most().orElse(Grading.USUAL), output);
        }
        if (files.size() > 1) {
            throw new ParameterException(spec.commandLine(), "Several files are run only with --grade");
        }
        file = files.get(0);
        RunInput input = RunInput.read(file);
        ResultFolder folder = ResultFolder.of(input, Optional.ofNullable(output));
        TerminalView terminal = StandardOutput.view();
        Path writes = folder.notebook().toAbsolutePath().getParent();
        try (Session session = GroovySession.in(file.toAbsolutePath().getParent(), writes, input.language())) {
            HeadlessRun run = new HeadlessRun(input, folder, terminal, Versions.edition(), session, choices);
            Thread stopping = new Thread(() -> stop(run), "stop");
            Runtime.getRuntime().addShutdownHook(stopping);
            int code = code(run.run());
            leave(stopping);
            return code;
        }
    }

    private HeadlessRun.Choices choices() {
        Optional<Duration> most =
                Optional.ofNullable(timeout).map(seconds -> Duration.ofMillis((long) (1000 * seconds)));
        if (most.filter(limit -> limit.toMillis() <= 0).isPresent()) {
            throw new ParameterException(spec.commandLine(), "A timeout is above 0 seconds");
        }
        return new HeadlessRun.Choices(RunParameters.of(parameters, set), most, timings);
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
            case TIMED_OUT -> ExitCode.TIMED_OUT;
            case STOPPED -> ExitCode.STOPPED;
        };
    }
}

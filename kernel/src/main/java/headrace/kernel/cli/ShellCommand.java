package headrace.kernel.cli;

import headrace.kernel.history.HistoryFolder;
import headrace.kernel.session.Language;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import headrace.kernel.terminal.Charts;
import headrace.kernel.terminal.PipedShell;
import headrace.kernel.terminal.Shell;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code headrace shell}: the words of a script, line by line in a terminal. */
@Command(
        name = "shell",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Runs what is typed, cell by cell, and draws charts in the terminal.",
        footerHeading = "%n",
        footer = {
            "Tab completes, Alt-H explains the word at the cursor, Ctrl-C stops a cell, Ctrl-D ends. Where the input or"
                    + " output is no terminal it reads cells and writes plain text.",
            "",
            "Ends with 0; with 1 if a cell failed that did not come from a terminal."
        })
final class ShellCommand implements Callable<Integer> {
    @Option(
            names = "--charts",
            paramLabel = "HOW",
            defaultValue = "auto",
            description = "How charts are drawn: auto, picture, dots or words. Default: auto, as a picture where the"
                    + " terminal says that it can, else in dots.")
    private Charts charts;

    @Option(
            names = "--language",
            paramLabel = "LANGUAGE",
            defaultValue = "groovy",
            description =
                    "The language of the cells: groovy or java. Default: groovy. %%%%java or %%%%groovy at the head of a"
                            + " cell switches for that cell.")
    private Language language;

    @Override
    public Integer call() throws IOException {
        try (GroovySession session = new GroovySession(language)) {
            if (!Boolean.getBoolean("headrace.terminal")) {
                return piped(session);
            }
            session.warmUp();
            // Of what the library asks before the first prompt nothing is needed, and some terminals answer late, or
            // never.
            try (Terminal terminal = TerminalBuilder.builder()
                    .system(true)
                    .graphemeCluster(false)
                    .build()) {
                new Shell(session, terminal, choices())
                        .run("Headrace " + Versions.edition().headrace()
                                + ". help() lists the words, Tab completes, Alt-H explains, Ctrl-D ends.");
            }
            return ExitCode.DONE;
        }
    }

    private static int piped(Session session) {
        boolean prompts = "dumb".equals(System.getProperty("headrace.terminal"));
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        boolean all =
                new PipedShell(session, out, prompts).run(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        return all ? ExitCode.DONE : ExitCode.CELL_FAILED;
    }

    private Shell.Choices choices() {
        Optional<Path> history = HistoryFolder.ofUser(
                        System.getenv(), System.getProperty("os.name"), Path.of(System.getProperty("user.home")))
                .flatMap(HistoryFolder::shellFile);
        return new Shell.Choices(charts, history, Boolean.getBoolean("headrace.colour"));
    }
}

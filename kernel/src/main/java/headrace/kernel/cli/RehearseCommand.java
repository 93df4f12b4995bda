package headrace.kernel.cli;

import headrace.kernel.session.groovy.GroovySession;
import headrace.kernel.terminal.Charts;
import headrace.kernel.terminal.Shell;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import org.jline.terminal.impl.LineDisciplineTerminal;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/**
 * {@code headrace rehearse}: what most users do first, with nobody looking on. The launcher has Java write down the
 * classes that are loaded meanwhile, so that the next start is fast.
 */
@Command(
        name = "rehearse",
        hidden = true,
        description = "Runs a notebook and types a cell into a shell. The launcher does so once after a build.")
final class RehearseCommand implements Callable<Integer> {
    private static final String TYPED = "1 + 1\rquadr\t\r\u0004";

    @Parameters(index = "0", paramLabel = "NOTEBOOK")
    private Path notebook;

    @Parameters(index = "1", paramLabel = "DIR", description = "A folder of its own, for what is written.")
    private Path folder;

    @Override
    public Integer call() throws IOException {
        reachForTheSystem();
        type();
        return new CommandLine(new RunCommand())
                .execute(
                        notebook.toString(),
                        "--output",
                        folder.resolve("results").toString());
    }

    /**
     * Asks a terminal of the system's own, in which nobody types, how wide it is: the way there is long on a new JDK.
     */
    private static void reachForTheSystem() throws IOException {
        try (Terminal terminal = TerminalBuilder.builder()
                .system(false)
                .graphemeCluster(false)
                .streams(InputStream.nullInputStream(), OutputStream.nullOutputStream())
                .build()) {
            terminal.getSize();
            terminal.enterRawMode();
        }
    }

    private void type() throws IOException {
        try (GroovySession session = new GroovySession();
                LineDisciplineTerminal terminal = new LineDisciplineTerminal(
                        "rehearsal", "xterm-256color", OutputStream.nullOutputStream(), StandardCharsets.UTF_8)) {
            terminal.setSize(Size.of(100, 40));
            terminal.processInputBytes(TYPED.getBytes(StandardCharsets.UTF_8));
            new Shell(session, terminal, new Shell.Choices(Charts.DOTS, Optional.of(folder.resolve("history")), true))
                    .run("");
        }
    }
}

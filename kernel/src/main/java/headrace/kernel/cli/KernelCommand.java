package headrace.kernel.cli;

import headrace.kernel.headless.page.Edition;
import headrace.kernel.message.Identity;
import headrace.kernel.server.Kernel;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import headrace.kernel.wire.ConnectionFile;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code headrace kernel}: serves a notebook front end, which starts this by the description that install writes. */
@Command(
        name = "kernel",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Serves a notebook. Started by the front end, once `headrace install` has made the kernel known.",
        footerHeading = "%n",
        footer = "Ends with 0 when the front end asks for that, is gone, or the process is told to end; 3 if the"
                + " connection file cannot be read or asks for what is not spoken here, 6 if a port is taken.")
final class KernelCommand implements Callable<Integer> {
    /** The command line that {@code install} writes; a front end puts the file in the last one's place. */
    static final List<String> COMMAND_LINE = List.of("kernel", "--connection", "{connection_file}");

    @Option(
            names = "--connection",
            required = true,
            paramLabel = "FILE",
            description = "The connection file that the front end wrote.")
    private Path connection;

    /** Returns whether the command line is the one that {@code install} writes into the kernel's description. */
    static boolean isAsked(String[] arguments) {
        return arguments.length == COMMAND_LINE.size()
                && List.of(arguments).subList(0, COMMAND_LINE.size() - 1).equals(COMMAND_LINE.subList(0, 2));
    }

    /** Serves without the option parser, which costs more than all else until the kernel answers. */
    static int atOnce(String[] arguments, PrintWriter err) {
        try {
            return serve(Path.of(arguments[2]));
        } catch (RuntimeException | InterruptedException failure) {
            return Main.told(failure, err);
        }
    }

    @Override
    public Integer call() throws InterruptedException {
        return serve(connection);
    }

    private static int serve(Path connection) throws InterruptedException {
        Kernel kernel = new Kernel(ConnectionFile.read(connection), identity(), System.err);
        kernel.endWithout(Starter.process(System.getenv()));
        Signals.on("INT", kernel::interrupt);
        Signals.on("TERM", kernel::end);
        kernel.serve(KernelCommand::session);
        return ExitCode.DONE;
    }

    /** The first cell is usually run by hand, a moment after the start: time enough to get the compiler ready. */
    private static Session session() {
        GroovySession session = new GroovySession();
        session.warmUp();
        return session;
    }

    private static Identity identity() {
        Edition edition = Versions.edition();
        return new Identity(
                edition.headrace(),
                new Identity.Language("groovy", edition.groovy(), "text/x-groovy", ".groovy"),
                "Headrace " + edition.headrace() + " with Groovy " + edition.groovy() + " on Java " + edition.jdk()
                        + ". The word help() lists the words by subject.",
                Map.of());
    }
}

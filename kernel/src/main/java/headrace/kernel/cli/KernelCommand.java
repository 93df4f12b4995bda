package headrace.kernel.cli;

import headrace.kernel.message.Identity;
import headrace.kernel.server.Kernel;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import headrace.kernel.wire.ConnectionFile;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
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

    /** Readies the session while the ports are bound: Groovy takes longer to start than all the rest. */
    private static int serve(Path connection) throws InterruptedException {
        CompletableFuture<Session> session = new CompletableFuture<>();
        inBackground("session", () -> ready(session));
        inBackground("grammar", KernelCommand::readyGrammar);
        Kernel kernel = new Kernel(ConnectionFile.read(connection), identity(), System.err);
        kernel.endWhen(Starter.gone(System.getenv()));
        Signals.on("INT", kernel::interrupt);
        Signals.on("TERM", kernel::end);
        kernel.serve(session::join);
        return ExitCode.DONE;
    }

    private static void inBackground(String name, Runnable work) {
        Thread thread = new Thread(work, "headrace-" + name);
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Unpacks the grammar of Groovy, which the first cell would wait for. Only these classes: they need nothing of the
     * rest of Groovy, so that two threads can never wait for each other's half-made classes.
     */
    private static void readyGrammar() {
        try {
            for (String name : List.of("GroovyLexer", "GroovyParser")) {
                Class.forName("org.apache.groovy.parser.antlr4." + name);
            }
        } catch (ClassNotFoundException | LinkageError elsewhere) {
            return; // another version of Groovy unpacks it when it needs it
        }
    }

    private static void ready(CompletableFuture<Session> session) {
        try {
            Session made = new GroovySession();
            made.run("1 + 1", false, Output.UNHEARD); // loads the compiler, so that the first cell finds it
            session.complete(made);
        } catch (Throwable failure) { // whatever it is, the front end is to hear of it
            session.completeExceptionally(failure);
        }
    }

    private static Identity identity() {
        Built built = Built.read();
        String banner = "Headrace " + built.headrace() + " with Groovy " + built.groovy() + " on Java "
                + System.getProperty("java.version") + ". The word help() lists the words by subject.";
        Identity.Language groovy = new Identity.Language("groovy", built.groovy(), "text/x-groovy", ".groovy");
        return new Identity(built.headrace(), groovy, banner, Map.of());
    }
}

package headrace.kernel.cli;

import headrace.kernel.history.History;
import headrace.kernel.history.HistoryFolder;
import headrace.kernel.message.Identity;
import headrace.kernel.server.Kernel;
import headrace.kernel.session.Language;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import headrace.kernel.wire.ConnectionFile;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

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
    private static final String OPENING = "kernel";
    private static final String CONNECTION = "--connection";
    private static final String LANGUAGE = "--language";

    @Option(
            names = CONNECTION,
            required = true,
            paramLabel = "FILE",
            description = "The connection file that the front end wrote.")
    private Path connection;

    @Option(
            names = LANGUAGE,
            paramLabel = "NAME",
            description = "The language of cells that do not say theirs: groovy or java. Default: groovy.")
    private String language = Language.GROOVY.word();

    @Spec
    private CommandSpec spec;

    /** Returns the command line that {@code install} writes; a front end puts the file in the last one's place. */
    static List<String> commandLine(Language language) {
        List<String> line = new ArrayList<>(List.of(OPENING));
        if (language != Language.GROOVY) {
            line.addAll(List.of(LANGUAGE, language.word()));
        }
        line.addAll(List.of(CONNECTION, "{connection_file}"));
        return line;
    }

    /** Returns the language whose command line this is, as {@code install} writes it into a kernel's description. */
    private static Optional<Language> asked(String... arguments) {
        List<String> given = List.of(arguments);
        for (Language each : Language.values()) {
            List<String> line = commandLine(each);
            int last = line.size() - 1;
            if (given.size() == line.size() && given.subList(0, last).equals(line.subList(0, last))) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }

    /** Returns whether the command line is one that {@code install} writes into a kernel's description. */
    static boolean isAsked(String... arguments) {
        return asked(arguments).isPresent();
    }

    /** Serves without the option parser, which costs more than all else until the kernel answers. */
    static int atOnce(String[] arguments, PrintWriter err) {
        try {
            return serve(
                    Path.of(arguments[arguments.length - 1]), asked(arguments).orElse(Language.GROOVY));
        } catch (RuntimeException | InterruptedException failure) {
            return Main.told(failure, err);
        }
    }

    @Override
    public Integer call() throws InterruptedException {
        Language chosen = Language.of(language)
                .orElseThrow(() ->
                        new ParameterException(spec.commandLine(), "Cells are groovy or java, not '" + language + "'"));
        return serve(connection, chosen);
    }

    /** Readies the session while the ports are bound: a language takes longer to start than all the rest. */
    private static int serve(Path connection, Language language) throws InterruptedException {
        CompletableFuture<Session> session = new CompletableFuture<>();
        inBackground("session", () -> ready(session, language));
        inBackground("grammar", KernelCommand::readyGrammar);
        Kernel kernel = new Kernel(ConnectionFile.read(connection), identity(language), history(), System.err);
        kernel.endWhen(Starter.gone(System.getenv()));
        Signals.on("INT", kernel::interrupt);
        Signals.on("TERM", kernel::end);
        kernel.serve(session::join);
        return ExitCode.DONE;
    }

    private static History history() {
        return HistoryFolder.ofUser(
                        System.getenv(), System.getProperty("os.name"), Path.of(System.getProperty("user.home")))
                .map(folder -> History.in(folder, complaint -> System.err.println("headrace: " + complaint)))
                .orElseGet(History::none);
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

    private static void ready(CompletableFuture<Session> session, Language language) {
        try {
            Session made = new GroovySession(language);
            made.run("1 + 1", false, Output.UNHEARD); // loads the compiler, so that the first cell finds it
            session.complete(made);
        } catch (Throwable failure) { // whatever it is, the front end is to hear of it
            session.completeExceptionally(failure);
        }
    }

    private static Identity identity(Language language) {
        Built built = Built.read();
        String java = System.getProperty("java.version");
        String banner = "Headrace " + built.headrace() + " with Groovy " + built.groovy() + " on Java " + java
                + ". Cells are in " + language.title() + " unless they begin with %%groovy or %%java."
                + " The word help() lists the words by subject.";
        String version = language == Language.JAVA ? java : built.groovy();
        Identity.Language cells =
                new Identity.Language(language.word(), version, language.mediaType(), language.ending());
        return new Identity(built.headrace(), cells, banner, Map.of());
    }
}

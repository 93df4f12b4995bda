package headrace.kernel.session.groovy;

import groovy.lang.MissingMethodException;
import groovy.lang.MissingPropertyException;
import headrace.kernel.session.Fault;
import headrace.kernel.session.cell.ExitAsked;
import headrace.kernel.session.cell.Variables;
import headrace.kernel.session.groovy.CellSources.Source;
import headrace.kernel.session.java.JavaTrouble;
import headrace.kernel.session.java.UnfinishedCode;
import headrace.problem.Refusal;
import headrace.script.Misspelling;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.UndeclaredThrowableException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.function.Supplier;
import org.codehaus.groovy.control.CompilationFailedException;
import org.codehaus.groovy.runtime.InvokerInvocationException;
import org.codehaus.groovy.runtime.typehandling.GroovyCastException;

/** Words a failure for the engineer who wrote the cell. */
final class Faults {
    private static final long MEGABYTE = 1 << 20;

    private final CellSources sources;
    private final Variables variables;
    private final Supplier<Set<String>> types;
    private final Supplier<Source> running;
    private volatile Throwable last;

    /**
     * Creates the wording.
     *
     * @param variables the variables and methods of the session, for what is misspelt or called wrongly
     * @param types answers with the names of the classes that its cells may use
     * @param running answers with the cell that runs
     */
    Faults(CellSources sources, Variables variables, Supplier<Set<String>> types, Supplier<Source> running) {
        this.running = running;
        this.sources = sources;
        this.variables = variables;
        this.types = types;
    }

    /** Words what a cell threw, or why it did not compile. */
    Fault of(Throwable thrown) {
        last = thrown;
        try {
            return worded(unwrapped(thrown));
        } catch (RuntimeException | StackOverflowError e) {
            String what = thrown.getClass().getSimpleName();
            return new Fault(what, what, List.of(what + ", which failed again when it was asked for its message"));
        }
    }

    /** Returns the last failure with all its frames. */
    String lastTrace() {
        Throwable failure = last;
        if (failure == null) {
            return "Nothing has failed yet.";
        }
        StringWriter text = new StringWriter();
        failure.printStackTrace(new PrintWriter(text));
        return text.toString();
    }

    /** Words that the user stopped a cell. */
    Fault stopped(StackTraceElement[] frames) {
        return refused(
                new Refusal(
                        SessionProblem.CELL_STOPPED,
                        "The cell was stopped",
                        "What it had assigned until then stays",
                        "Run it again when it is wanted"),
                frames);
    }

    /** Words that a cell could not be stopped. */
    Fault leftBehind(StackTraceElement[] frames) {
        return refused(
                new Refusal(
                        SessionProblem.CELL_LEFT_BEHIND,
                        "The cell was told to stop but hears nothing: it sits in " + sources.calledFromCell(frames),
                        "The session goes on without it and keeps its variables; the cell goes on until it ends by itself",
                        "Restart if it uses the processor or holds what other cells need"),
                frames);
    }

    private Fault worded(Throwable failure) {
        if (failure instanceof CompilationFailedException uncompiled) {
            return new CompileFaults(sources, types.get()).of(uncompiled);
        }
        if (failure instanceof JavaTrouble trouble) {
            return new JavaFaults(variables, types.get()).of(trouble, running.get());
        }
        StackTraceElement[] frames = failure.getStackTrace();
        if (failure instanceof UnfinishedCode unfinished) {
            return refused(unfinished(unfinished), frames);
        }
        if (failure instanceof Refusal refusal) {
            return refused(refusal, frames);
        }
        if (failure instanceof StackOverflowError) {
            return refused(tooDeep(), frames);
        }
        if (failure instanceof OutOfMemoryError) {
            return refused(memoryUsedUp(), frames);
        }
        if (failure instanceof ExitAsked exit) {
            return refused(exitRefused(exit), frames);
        }
        if (failure instanceof MissingPropertyException || failure instanceof MissingMethodException) {
            Optional<Refusal> named = new WrongCalls(variables)
                    .explain(failure)
                    .or(() -> Misspelling.explain(failure, variables.names()));
            if (named.isPresent()) {
                return refused(named.get(), frames);
            }
        }
        return plain(failure);
    }

    private Fault refused(Refusal refusal, StackTraceElement[] frames) {
        List<String> lines = new ArrayList<>(refusal.getMessage().lines().toList());
        lines.addAll(sources.trace(frames));
        return new Fault(refusal.problem().anchor(), refusal.getMessage(), lines);
    }

    private Fault plain(Throwable failure) {
        String name = nameOf(failure);
        String message = messageOf(failure);
        List<String> lines = new ArrayList<>(
                (message.isEmpty() ? name : name + ": " + message).lines().toList());
        lines.addAll(sources.trace(failure.getStackTrace()));
        Throwable cause = failure;
        for (int i = 0; i < 3 && cause.getCause() != null; i++) {
            cause = cause.getCause();
            lines.addAll(("because of " + nameOf(cause) + ": " + messageOf(cause))
                    .lines()
                    .toList());
            lines.addAll(sources.trace(cause.getStackTrace()));
        }
        return new Fault(name, message.isEmpty() ? name : message, lines);
    }

    private static String nameOf(Throwable failure) {
        String simple = failure.getClass().getSimpleName();
        return simple.isEmpty() ? CellSources.bare(failure.getClass().getName()) : simple;
    }

    private String messageOf(Throwable failure) {
        String message = failure.getMessage() == null ? "" : failure.getMessage();
        if (failure instanceof GroovyCastException) {
            message = message.replaceFirst(" due to: .*", "").replaceAll("\\b(?:[a-z]\\w*\\.)+([A-Z])", "$1");
        }
        return sources.relabelled(message);
    }

    /** Returns what went wrong inside of the wrappers that calls through the machinery put around it. */
    private static Throwable unwrapped(Throwable thrown) {
        Throwable inner = thrown;
        while (inner.getCause() != null
                && (inner instanceof InvokerInvocationException
                        || inner instanceof InvocationTargetException
                        || inner instanceof UndeclaredThrowableException
                        || inner instanceof ExecutionException
                        || inner instanceof CompletionException
                        || inner instanceof ExceptionInInitializerError)) {
            inner = inner.getCause();
        }
        return inner;
    }

    private static Refusal unfinished(UnfinishedCode code) {
        String missing = String.join(" and ", code.missing());
        return new Refusal(
                SessionProblem.UNFINISHED_CODE,
                code.name() + " was used",
                "It needs " + missing + ", which no cell has defined yet",
                "Define that and run the cell again");
    }

    private static Refusal tooDeep() {
        return new Refusal(
                SessionProblem.TOO_DEEP,
                "A method or closure called itself without end",
                "Calls can be many thousand deep, not endlessly",
                "Look for the call in the lines below and give it a case in which it stops");
    }

    private static Refusal memoryUsedUp() {
        Runtime runtime = Runtime.getRuntime();
        long used = (runtime.totalMemory() - runtime.freeMemory()) / MEGABYTE;
        return new Refusal(
                SessionProblem.MEMORY_USED_UP,
                "The cell needed more memory than there is",
                "Of " + runtime.maxMemory() / MEGABYTE + " MB, variables and what else is left now take " + used
                        + " MB",
                "Set variables that are no longer needed to null, or start with more memory (-Xmx)");
    }

    private static Refusal exitRefused(ExitAsked exit) {
        return new Refusal(
                SessionProblem.EXIT_REFUSED,
                "The cell asked to end the process with exit code " + exit.status(),
                "A cell can end itself, not the process that holds the session",
                "Write return to leave the cell early, or shut the session down from outside");
    }
}

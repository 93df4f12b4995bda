package headrace.kernel.session.java;

import headrace.kernel.session.Completeness;
import headrace.kernel.session.Completion;
import headrace.kernel.session.Completion.Candidate;
import headrace.kernel.session.cell.CellCompiler;
import headrace.kernel.session.cell.Variables;
import headrace.kernel.session.java.JavaTrouble.Mistake;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.Diag;
import jdk.jshell.ErroneousSnippet;
import jdk.jshell.ExpressionSnippet;
import jdk.jshell.ImportSnippet;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.SnippetWrapper;
import jdk.jshell.UnresolvedReferenceException;

/** The Java cells of one session. One thread runs cells; any may ask about a text. */
public final class JavaCells implements AutoCloseable {
    /** What every cell imports: the words first, then what a script is likely to need. */
    private static final List<String> IMPORTS = List.of(
            "import static headrace.words.Words.*;",
            "import headrace.units.*;",
            "import headrace.problem.Refusal;",
            "import java.util.*;",
            "import java.util.function.*;",
            "import java.util.stream.*;",
            "import java.io.*;",
            "import java.nio.file.*;");

    private final ReentrantLock lock = new ReentrantLock();
    private final LiveClasses classes;
    private final LiveControl control;
    private final JShell shell;
    private final CellCompiler groovy;
    private final Shared shared;
    private final Map<String, String> met = new HashMap<>();

    /** Hears of a running cell what its text cannot tell. */
    public interface Hearer {
        /**
         * Says where a file of the compiler stands in the cell that runs.
         *
         * @param file its name in traces
         * @param shift how many lines later a line of it stands in the cell
         * @param first the line of the cell before which none of its lines can stand
         */
        void placed(String file, int shift, int first);

        /** Says what the user must know beside the cell's value. */
        void note(String sentence);
    }

    private JavaCells(CellCompiler groovy, Variables variables) {
        this.groovy = groovy;
        classes = new LiveClasses(groovy.loader());
        control = new LiveControl(classes, lock);
        shell = JShell.builder()
                .executionEngine(control, null)
                .fileManager(files -> new LiveFiles(files, this::live))
                .compilerOptions("-g", "-parameters")
                .build();
        shared = new Shared(shell, classes, variables, groovy);
        groovy.alsoIn(classes);
    }

    /**
     * Wakes the compiler, which takes a second.
     *
     * @param groovy where Groovy cells leave their classes, and find those of Java cells
     * @param variables the variables and methods of the session
     */
    public static JavaCells over(CellCompiler groovy, Variables variables) {
        JavaCells made = new JavaCells(groovy, variables);
        IMPORTS.forEach(made.shell::eval);
        made.shell.eval("1 + 1").forEach(event -> made.shell.drop(event.snippet()));
        return made;
    }

    private Map<String, byte[]> live() {
        Map<String, byte[]> all = new HashMap<>(groovy.bytecode());
        all.putAll(classes.words());
        return all;
    }

    /**
     * Runs a cell.
     *
     * @return the value of its last expression, or null
     * @throws Throwable what the cell throws
     */
    public Object run(String code, Hearer hearer) throws Throwable {
        lock.lock();
        try {
            List<Piece> pieces = Piece.of(code, shell.sourceCodeAnalysis());
            Optional<Piece> broken = pieces.stream().filter(Piece::isBroken).findFirst();
            if (broken.isPresent() && pieces.size() > 1) {
                evaluate(broken.get(), hearer); // throws, before anything has run
            }
            meetGroovyClasses();
            shared.bring(code);
            Object value = null;
            for (Piece piece : pieces) {
                value = evaluate(piece, hearer);
            }
            return value;
        } finally {
            lock.unlock();
        }
    }

    /** Lets Java see the newest classes that Groovy cells have defined. */
    private void meetGroovyClasses() {
        Map<String, String> now = groovy.defined();
        now.forEach((name, full) -> {
            boolean ofJava = full.startsWith(LiveClasses.PACKAGE);
            if (!full.equals(met.put(name, full)) && !ofJava) {
                shell.eval("import " + full + ";");
            }
        });
    }

    private Object evaluate(Piece piece, Hearer hearer) throws Throwable {
        control.begin();
        Shared.Held before = shared.held();
        List<SnippetEvent> events = shell.eval(piece.source());
        boolean shown = false;
        for (SnippetEvent event : events) {
            place(event, piece, hearer);
            if (event.causeSnippet() == null) {
                refuse(event, piece);
                shown |= isShown(event.snippet());
            }
        }
        shared.learn(events);
        shared.lost(events, before).forEach(hearer::note);
        if (control.thrown() != null) {
            throw thrown(events);
        }
        events.forEach(event -> waiting(event, hearer));
        Object value = control.value();
        events.stream()
                .map(SnippetEvent::snippet)
                .filter(each -> each.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND && isActive(each))
                .forEach(shell::drop);
        return shown ? value : null;
    }

    private boolean isActive(Snippet snippet) {
        return shell.status(snippet).isActive();
    }

    private Throwable thrown(List<SnippetEvent> events) {
        for (SnippetEvent event : events) {
            if (event.exception() instanceof UnresolvedReferenceException missing) {
                List<String> names = shell.unresolvedDependencies(missing.getSnippet())
                        .map(JavaCells::bare)
                        .toList();
                return new UnfinishedCode(
                        Shared.nameOf(missing.getSnippet()),
                        names,
                        control.thrown().getStackTrace());
            }
        }
        return control.thrown();
    }

    private static boolean isShown(Snippet snippet) {
        return snippet.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND
                || snippet instanceof ExpressionSnippet && snippet.subKind() != SubKind.ASSIGNMENT_SUBKIND;
    }

    /** Notes on which lines of the cell the compiler's lines stand. */
    private void place(SnippetEvent event, Piece piece, Hearer hearer) {
        Snippet snippet = event.snippet();
        boolean own = event.causeSnippet() == null;
        if (!own || snippet instanceof ErroneousSnippet || snippet instanceof ImportSnippet) {
            return;
        }
        SnippetWrapper wrapper = shell.sourceCodeAnalysis().wrapper(snippet);
        String source = snippet.source();
        int last = Math.max(0, source.stripTrailing().replaceFirst(";$", "").length() - 1);
        int first = source.length() - source.stripLeading().length();
        int wrapped = wrapper.sourceToWrappedPosition(last);
        int there = lines(
                wrapper.wrapped(),
                Math.max(0, Math.min(wrapped, wrapper.wrapped().length())));
        int begun = piece.lineOf(source);
        int here = begun - 1 + lines(source, last) - lines(source, first);
        String name = wrapper.fullClassName();
        hearer.placed(name.substring(name.lastIndexOf('.') + 1) + ".java", here - there, begun);
    }

    private static int lines(String text, int end) {
        return (int) text.substring(0, Math.min(end, text.length()))
                .chars()
                .filter(each -> each == '\n')
                .count();
    }

    private void refuse(SnippetEvent event, Piece piece) {
        if (event.status() != Status.REJECTED) {
            return;
        }
        List<Mistake> mistakes = shell.diagnostics(event.snippet())
                .filter(Diag::isError)
                .map(each -> new Mistake(
                        each.getCode(),
                        each.getMessage(Locale.ENGLISH),
                        piece.start() + (int) Math.max(0, each.getPosition()),
                        piece.start() + (int) Math.max(0, each.getEndPosition())))
                .toList();
        throw new JavaTrouble(
                mistakes.isEmpty()
                        ? List.of(new Mistake(
                                "", "The compiler of Java takes no such code", piece.start(), piece.start()))
                        : mistakes);
    }

    /** Says of a definition that it waits for others. */
    private void waiting(SnippetEvent event, Hearer hearer) {
        boolean waits =
                event.status() == Status.RECOVERABLE_DEFINED || event.status() == Status.RECOVERABLE_NOT_DEFINED;
        if (event.causeSnippet() == null && waits && event.snippet() instanceof DeclarationSnippet definition) {
            List<String> names = shell.unresolvedDependencies(definition)
                    .map(JavaCells::bare)
                    .toList();
            String missing = names.isEmpty()
                    ? "what the compiler says is mended: "
                            + shell.diagnostics(definition)
                                    .map(each -> each.getMessage(Locale.ENGLISH))
                                    .findFirst()
                                    .orElse("")
                    : String.join(" and ", names) + (names.size() == 1 ? " is defined" : " are defined");
            hearer.note(Shared.nameOf(definition) + " can be used once " + missing + ".");
        }
    }

    /** Returns what is missing without the word for its kind: {@code price()} for {@code method price()}. */
    private static String bare(String missing) {
        return missing.substring(missing.indexOf(' ') + 1);
    }

    /** Returns whether code could run as it stands. */
    public Completeness completeness(String code) {
        lock.lock();
        try {
            return Piece.completeness(code, shell.sourceCodeAnalysis());
        } finally {
            lock.unlock();
        }
    }

    /** Returns what the compiler knows to be possible at a place, such as the members of what a call returns. */
    public Completion completion(String code, int cursor) {
        lock.lock();
        try {
            int[] start = {cursor};
            List<Candidate> candidates = shell.sourceCodeAnalysis().completionSuggestions(code, cursor, start).stream()
                    .map(SourceCodeAnalysis.Suggestion::continuation)
                    .filter(text -> !text.isBlank() && !text.contains("$"))
                    .distinct()
                    .map(text -> new Candidate(text, text.contains("(") ? "method" : "property", ""))
                    .toList();
            return new Completion(candidates.isEmpty() ? cursor : start[0], cursor, candidates);
        } finally {
            lock.unlock();
        }
    }

    @Override
    public void close() {
        shared.end();
        shell.close();
    }
}

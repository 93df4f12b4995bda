package headrace.kernel.session.groovy;

import groovy.lang.Closure;
import groovy.lang.Script;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Completeness;
import headrace.kernel.session.Completion;
import headrace.kernel.session.Fault;
import headrace.kernel.session.HistoryEntry;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Progress;
import headrace.kernel.session.Session;
import headrace.kernel.session.assist.Completer;
import headrace.kernel.session.assist.Inspector;
import headrace.kernel.session.assist.Scope;
import headrace.kernel.session.cell.CellCompiler;
import headrace.kernel.session.cell.Compiled;
import headrace.kernel.session.cell.Variables;
import headrace.kernel.session.groovy.CellSources.Source;
import headrace.kernel.session.java.JavaCells;
import headrace.kernel.session.source.CellText;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.script.ScriptFolder;
import headrace.script.ScriptLanguage;
import headrace.script.Vocabulary;
import headrace.units.Quantities;
import headrace.units.UnitSystem;
import headrace.work.Work;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.codehaus.groovy.runtime.InvokerHelper;

/**
 * A session whose cells are Groovy or Java, with the words of a script, on the same variables, methods and classes.
 *
 * <p>The compiler of Java is woken by the first Java cell, so that a session without one never waits for it.
 */
public final class GroovySession implements Session {
    private static final Outcome UNTOLD = new Outcome.Failed(new Fault(
            "Error",
            "The cell failed, and so did the wording of it",
            List.of("The cell failed, and so did the wording of it")));

    private final Variables variables = new Variables();
    private final CellCompiler compiler =
            new CellCompiler(ScriptLanguage.configuration(), words(), variables::callable);
    private final List<HistoryEntry> history = new ArrayList<>();
    private final CellSources sources = new CellSources();
    private final Set<String> places = ConcurrentHashMap.newKeySet();
    private final Faults faults = new Faults(sources, variables, this::typeNames, this::runningText);
    private final Path reads;
    private final ScriptFolder folder;
    private volatile CellThread thread = new CellThread(compiler.loader());
    private final Language usual;
    private int count;
    private int asides;
    private final Object waking = new Object();
    private volatile JavaCells java;
    private volatile String runningName = "";
    private volatile CellRun running;

    /** In which units the cells print: chosen on the cell thread, heeded by what other threads say of variables. */
    private volatile UnitSystem units = UnitSystem.current();

    /** Starts a session that finds and leaves its files in the current folder. */
    public GroovySession() {
        this(Language.GROOVY);
    }

    /** Starts a session in the current folder whose cells are in a language unless they say otherwise. */
    public GroovySession(Language usual) {
        this(Path.of(""), Path.of(""), usual);
    }

    private GroovySession(Path reads, Path writes, Language usual) {
        this.usual = usual;
        this.reads = reads;
        this.folder = ScriptFolder.of(reads, writes);
    }

    /**
     * Starts a session that finds its files in one folder, and in those above it, and leaves its own in another.
     *
     * @param reads the folder of the script
     * @param writes where its files go
     */
    public static GroovySession in(Path reads, Path writes) {
        return new GroovySession(reads, writes, Language.GROOVY);
    }

    /**
     * Starts a session that finds its files in one folder, and in those above it, and leaves its own in another.
     *
     * @param reads the folder of the script
     * @param writes where its files go
     * @param usual the language of cells that do not say theirs
     */
    public static GroovySession in(Path reads, Path writes, Language usual) {
        return new GroovySession(reads, writes, usual);
    }

    /**
     * Gets the compiler and the words ready on the cell thread, so that the first cell need not wait for them. Leaves
     * nothing behind.
     */
    public void warmUp() {
        thread.submit(() -> {
            Compiled warm =
                    compiler.compile("Warm", "def f(x) { x * 2.5 }\n[52.m3ph, 16.m].collect { f(1) }\n\"${1 / 3}\"");
            warm.over(new Variables()).run();
            compiler.forget(warm);
        });
    }

    @Override
    public synchronized int count() {
        return count;
    }

    @Override
    public Outcome run(String code, boolean kept, Output output) {
        int number;
        String name;
        synchronized (this) {
            number = kept ? ++count : count;
            name = kept ? "Cell_" + number : "Aside_" + ++asides;
        }
        sources.put(name, kept ? "Cell " + number : "This cell", code);
        Outcome outcome = inTurn(name, output, () -> evaluate(name, code, output));
        if (kept) {
            keep(number, code, outcome);
        } else {
            sources.remove(name);
        }
        return outcome;
    }

    @Override
    public Optional<Fault> aside(Runnable work, Output output) {
        String name;
        synchronized (this) {
            name = "Aside_" + ++asides;
        }
        sources.put(name, "What was moved", "");
        Outcome outcome = inTurn(name, output, () -> {
            work.run();
            return new Outcome.Done();
        });
        sources.remove(name);
        return outcome instanceof Outcome.Failed failed ? Optional.of(failed.fault()) : Optional.empty();
    }

    /** What runs in the turn of a cell. */
    @FunctionalInterface
    private interface Body {
        Outcome run() throws Throwable;
    }

    /** Lets the cell thread run something to its end, however long that takes, and waits for it. */
    private Outcome inTurn(String name, Output output, Body body) {
        CellRun run = new CellRun(frames -> new Outcome.Failed(faults.leftBehind(frames)));
        running = run;
        Progress progress = new Progress(run::stopAsked, output);
        thread.submit(() -> runHere(name, output, body, run, progress));
        Outcome outcome = run.await();
        running = null;
        if (run.wasLeftBehind()) {
            progress.end();
            thread.close();
            thread = new CellThread(compiler.loader());
        }
        return outcome;
    }

    private synchronized void keep(int number, String code, Outcome outcome) {
        String result = outcome instanceof Outcome.Value value ? value.bundle().text() : "";
        history.add(new HistoryEntry(number, code, result));
    }

    /** Runs it on the cell thread. Whatever happens, the run ends. */
    private void runHere(String name, Output output, Body body, CellRun run, Progress progress) {
        run.begin();
        units.choose();
        folder.choose();
        Console.lead(new Surroundings(output, faults, variables, places));
        Outcome[] outcome = {new Outcome.Done()};
        try {
            runningName = name;
            Throwable[] thrown = {null};
            Work.watched(progress, () -> {
                try {
                    outcome[0] = body.run();
                } catch (Throwable failure) {
                    thrown[0] = failure;
                }
            });
            if (thrown[0] != null) {
                throw thrown[0];
            }
        } catch (Throwable thrown) {
            // What is thrown while this is worded, such as when the memory is used up, must not look like success.
            outcome[0] = UNTOLD;
            outcome[0] = new Outcome.Failed(faults.of(thrown));
        } finally {
            // A cell that swallowed the wish to stop was stopped all the same: what comes after it is not to run.
            if (run.stopAsked()) {
                outcome[0] = new Outcome.Failed(faults.stopped(run.stoppedAt()));
            }
            if (!run.wasLeftBehind()) {
                units = UnitSystem.current();
            }
            try {
                progress.end();
            } finally {
                Console.release();
                run.end(outcome[0]);
            }
        }
    }

    private Outcome evaluate(String name, String cell, Output output) throws Throwable {
        CellText text = CellText.of(cell, usual);
        if (text.language().isEmpty()) {
            throw unknownLanguage(text.named());
        }
        return text.isJava() ? evaluateJava(name, text.code(), output) : evaluateGroovy(name, text.code());
    }

    private Outcome evaluateJava(String name, String code, Output output) throws Throwable {
        Object value = java().run(code, new JavaCells.Hearer() {
            @Override
            public void placed(String file, int shift, int first) {
                sources.place(file, name, shift, first);
            }

            @Override
            public void note(String sentence) {
                output.print(sentence + "\n");
            }
        });
        return outcome(value);
    }

    /** Returns the Java cells, and wakes their compiler if nobody has yet. */
    private JavaCells java() {
        synchronized (waking) {
            if (java == null) {
                java = JavaCells.over(compiler, variables);
            }
            return java;
        }
    }

    /** Returns whether the compiler of Java was woken. */
    boolean isJavaAwake() {
        return java != null;
    }

    private Source runningText() {
        return sources.of(runningName);
    }

    private static Refusal unknownLanguage(String named) {
        List<String> languages =
                Arrays.stream(Language.values()).map(Language::word).toList();
        return new Refusal(
                SessionProblem.UNKNOWN_LANGUAGE,
                "The cell begins with %%" + named,
                "A cell is " + Nearest.either(languages),
                Nearest.sentence(Nearest.to(named, languages), "Leave the line out, or write %%java"));
    }

    private Outcome outcome(Object value) {
        return value == null ? new Outcome.Done() : new Outcome.Value(CellValue.shown(value, variables));
    }

    private Outcome evaluateGroovy(String name, String code) {
        Compiled cell = compiler.compile(name, code);
        try {
            Script script = cell.over(variables);
            for (String method : cell.methods()) {
                variables.keep(method, (Closure<?>) InvokerHelper.getMethodPointer(script, method));
            }
            return outcome(script.run());
        } finally {
            compiler.forget(cell);
        }
    }

    @Override
    public void interrupt() {
        CellRun run = running;
        if (run != null) {
            run.stop();
        }
    }

    @Override
    public Completeness completeness(String code) {
        CellText text = CellText.of(code, usual);
        if (text.namesLanguageAlone()) {
            return new Completeness(Completeness.State.INCOMPLETE, "");
        }
        return text.isJava() ? java().completeness(text.code()) : CompletenessCheck.of(text.code());
    }

    @Override
    public Completion complete(String code, int cursor) {
        CellText text = CellText.of(code, usual);
        Completion known = new Completer(scope(), text.language().orElse(usual)).at(text.code(), cursor);
        return text.isJava() && known.candidates().isEmpty() && java != null
                ? java.completion(text.code(), cursor)
                : known;
    }

    @Override
    public Optional<MimeBundle> inspect(String code, int cursor, int detail) {
        UnitSystem own = UnitSystem.current();
        units.choose();
        try {
            CellText text = CellText.of(code, usual);
            return new Inspector(scope(), text.language().orElse(usual)).at(text.code(), cursor, detail);
        } finally {
            own.choose();
        }
    }

    private static Set<String> words() {
        return Vocabulary.all().words().stream().map(Vocabulary.Entry::name).collect(Collectors.toSet());
    }

    private Set<String> typeNames() {
        Set<String> names = new TreeSet<>(compiler.knownTypes().keySet());
        Quantities.KINDS.forEach(kind -> names.add(kind.type().getSimpleName()));
        return names;
    }

    private Scope scope() {
        return new Scope(
                variables.values(),
                variables.methodParameters(),
                compiler.knownTypes(),
                compiler.openPackages(),
                compiler.loader(),
                reads);
    }

    @Override
    public synchronized List<HistoryEntry> history() {
        return List.copyOf(history);
    }

    @Override
    public void close() {
        interrupt();
        thread.close();
        if (java != null) {
            java.close();
        }
    }
}

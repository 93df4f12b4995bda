package headrace.kernel.session;

import groovy.lang.Closure;
import groovy.lang.Script;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.cell.CellCompiler;
import headrace.kernel.session.cell.Compiled;
import headrace.kernel.session.cell.Stop;
import headrace.kernel.session.cell.Variables;
import headrace.work.Watcher;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.codehaus.groovy.control.CompilerConfiguration;
import org.codehaus.groovy.runtime.FormatHelper;
import org.codehaus.groovy.runtime.InvokerHelper;

/** A session whose cells are Groovy with the words of a script. */
public final class GroovySession implements Session {
    private final Variables variables = new Variables();
    private final CellCompiler compiler = new CellCompiler(new CompilerConfiguration());
    private final List<HistoryEntry> history = new ArrayList<>();
    private final CellSources sources = new CellSources();
    private final Faults faults = new Faults(sources);
    private CellThread thread = new CellThread(compiler.loader());
    private int count;
    private int runs;
    private volatile Running running;

    /** One run of a cell. */
    private static final class Running {
        final CompletableFuture<Outcome> outcome = new CompletableFuture<>();
        volatile Stop stop;
        volatile Thread thread;
        volatile boolean stopAsked;
    }

    @Override
    public synchronized int count() {
        return count;
    }

    @Override
    public Outcome run(String code, boolean kept, Output output) {
        Running run = new Running();
        int number;
        String name;
        synchronized (this) {
            runs++;
            if (kept) {
                count++;
            }
            number = count;
            name = kept ? "Cell_" + number : "Aside_" + runs;
            sources.put(name, kept ? "Cell " + number : "This cell", code);
            running = run;
        }
        thread.submit(() -> {
            run.thread = Thread.currentThread();
            Outcome outcome = runHere(name, code, output, run);
            Thread.interrupted();
            run.outcome.complete(outcome);
        });
        Outcome outcome = run.outcome.join();
        synchronized (this) {
            running = null;
            if (kept) {
                String result =
                        outcome instanceof Outcome.Value value ? value.bundle().text() : "";
                history.add(new HistoryEntry(number, code, result));
            }
        }
        return outcome;
    }

    private Outcome runHere(String name, String code, Output output, Running run) {
        Stop stop = Stop.begin();
        run.stop = stop;
        if (run.stopAsked) {
            stop.raise();
        }
        Console.lead(output);
        Outcome[] outcome = {new Outcome.Done()};
        try {
            Work.watched(watcher(stop), () -> outcome[0] = evaluate(name, code));
        } catch (Throwable failure) {
            outcome[0] = new Outcome.Failed(faults.of(failure));
        } finally {
            Console.release();
            stop.end();
        }
        return outcome[0];
    }

    private Outcome evaluate(String name, String code) {
        Compiled cell = compiler.compile(name, code);
        try {
            Script script = cell.over(variables);
            for (String method : cell.methods()) {
                variables.keep(method, (Closure<?>) InvokerHelper.getMethodPointer(script, method));
            }
            Object value = script.run();
            return value == null
                    ? new Outcome.Done()
                    : new Outcome.Value(MimeBundle.plain(FormatHelper.toString(value)));
        } finally {
            compiler.forget(cell);
        }
    }

    private static Watcher watcher(Stop stop) {
        return new Watcher() {
            @Override
            public boolean stopped() {
                return stop.isRaised();
            }

            @Override
            public void progress(String what, double share) {}
        };
    }

    @Override
    public void interrupt() {
        Running run = running;
        if (run != null) {
            run.stopAsked = true;
            Stop stop = run.stop;
            Thread on = run.thread;
            if (stop != null) {
                stop.raise();
            }
            if (on != null) {
                on.interrupt();
            }
        }
    }

    @Override
    public Completeness completeness(String code) {
        return new Completeness(Completeness.State.COMPLETE, "");
    }

    @Override
    public Completion complete(String code, int cursor) {
        return new Completion(cursor, cursor, List.of());
    }

    @Override
    public Optional<MimeBundle> inspect(String code, int cursor, int detail) {
        return Optional.empty();
    }

    @Override
    public synchronized List<HistoryEntry> history() {
        return List.copyOf(history);
    }

    @Override
    public void close() {
        interrupt();
        thread.close();
    }
}

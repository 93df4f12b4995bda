package headrace.kernel.server;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Completeness;
import headrace.kernel.session.Completion;
import headrace.kernel.session.Fault;
import headrace.kernel.session.HistoryEntry;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/** A session that runs no language: each cell does what the test says. */
class ScriptedSession implements Session {
    private final BiFunction<String, Output, Outcome> cell;
    private final List<HistoryEntry> history = new ArrayList<>();
    private volatile Thread running;

    ScriptedSession(BiFunction<String, Output, Outcome> cell) {
        this.cell = cell;
    }

    static Outcome value(String text) {
        return new Outcome.Value(MimeBundle.plain(text));
    }

    @Override
    public synchronized int count() {
        return history.size();
    }

    @Override
    public Outcome run(String code, boolean kept, Output output) {
        running = Thread.currentThread();
        Outcome outcome;
        try {
            outcome = cell.apply(code, output);
        } catch (headrace.work.Stopped stopped) {
            outcome = new Outcome.Failed(new Fault("stopped", "stopped", List.of("stopped")));
        } finally {
            running = null;
            Thread.interrupted();
        }
        if (kept) {
            synchronized (this) {
                history.add(new HistoryEntry(history.size() + 1, code, "result of " + code));
            }
        }
        return outcome;
    }

    @Override
    public Optional<Fault> aside(Runnable work, Output output) {
        work.run();
        return Optional.empty();
    }

    @Override
    public void interrupt() {
        Thread thread = running;
        if (thread != null) {
            thread.interrupt();
        }
    }

    @Override
    public Completeness completeness(String code) {
        return new Completeness(Completeness.State.INCOMPLETE, "  ");
    }

    /** Offers one candidate for the word that ends at the cursor, and tells the cursor as its signature. */
    @Override
    public Completion complete(String code, int cursor) {
        int start = code.lastIndexOf(' ', cursor - 1) + 1;
        return new Completion(start, cursor, List.of(new Completion.Candidate("flow", "word", "at " + cursor)));
    }

    @Override
    public Optional<MimeBundle> inspect(String code, int cursor, int detail) {
        return code.isBlank()
                ? Optional.empty()
                : Optional.of(MimeBundle.plain(code.substring(0, cursor) + " in detail " + detail));
    }

    @Override
    public synchronized List<HistoryEntry> history() {
        return List.copyOf(history);
    }

    @Override
    public void close() {}
}

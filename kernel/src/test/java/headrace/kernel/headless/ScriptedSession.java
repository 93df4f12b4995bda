package headrace.kernel.headless;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Completeness;
import headrace.kernel.session.Completion;
import headrace.kernel.session.Fault;
import headrace.kernel.session.HistoryEntry;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Runs no code: does for each text what it was told to do. */
final class ScriptedSession implements Session {
    final List<String> asked = new ArrayList<>();
    volatile boolean interrupted;
    private final Map<String, Function<Output, Outcome>> answers = new HashMap<>();

    ScriptedSession on(String code, Function<Output, Outcome> answer) {
        answers.put(code, answer);
        return this;
    }

    static Outcome failed(String name) {
        return new Outcome.Failed(
                new Fault(name, "Asked. Possible. Next", List.of("Asked. Possible. Next", "Cell, line 1")));
    }

    static Outcome value(String text) {
        return new Outcome.Value(MimeBundle.plain(text));
    }

    @Override
    public Outcome run(String code, boolean kept, Output output) {
        asked.add(code);
        return answers.getOrDefault(code.strip(), any -> new Outcome.Done()).apply(output);
    }

    @Override
    public int count() {
        return asked.size();
    }

    @Override
    public Optional<Fault> aside(Runnable work, Output output) {
        work.run();
        return Optional.empty();
    }

    @Override
    public void interrupt() {
        interrupted = true;
    }

    @Override
    public Completeness completeness(String code) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Completion complete(String code, int cursor) {
        throw new UnsupportedOperationException();
    }

    @Override
    public Optional<MimeBundle> inspect(String code, int cursor, int detail) {
        throw new UnsupportedOperationException();
    }

    @Override
    public List<HistoryEntry> history() {
        return List.of();
    }

    @Override
    public void close() {}
}

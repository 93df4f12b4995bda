package headrace.kernel.session.groovy;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Output;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** An output that remembers all that it was told, in order. */
class Recorded implements Output {
    /** One call. */
    record Event(String kind, String text) {}

    final List<Event> events = Collections.synchronizedList(new ArrayList<>());
    final Deque<String> answers = new ArrayDeque<>();

    @Override
    public void print(String text) {
        events.add(new Event("out", text));
    }

    @Override
    public void printError(String text) {
        events.add(new Event("err", text));
    }

    @Override
    public void show(MimeBundle bundle, Optional<String> id) {
        events.add(new Event("show", bundle.text()));
    }

    @Override
    public void update(MimeBundle bundle, String id) {
        events.add(new Event("update", bundle.text()));
    }

    @Override
    public void clear(boolean wait) {
        events.add(new Event("clear", ""));
    }

    @Override
    public void progress(HowFar far) {
        events.add(new Event("progress", far.text()));
    }

    @Override
    public void progressEnded() {
        events.add(new Event("progress ended", ""));
    }

    @Override
    public Optional<String> ask(String prompt, boolean secret) {
        events.add(new Event("ask", prompt));
        return Optional.ofNullable(answers.poll());
    }

    String out() {
        return text("out");
    }

    String err() {
        return text("err");
    }

    private String text(String kind) {
        synchronized (events) {
            return events.stream()
                    .filter(event -> event.kind().equals(kind))
                    .map(Event::text)
                    .collect(Collectors.joining());
        }
    }
}

package headrace.kernel.handler;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.message.Event;
import headrace.kernel.session.Output;
import java.util.Optional;

/** Tells every front end what a request causes, while it runs and after. May be called by any thread. */
public interface Publisher extends Output {
    /** Publishes an event, after everything that was printed before it. */
    void publish(Event event);

    @Override
    default void show(MimeBundle bundle, Optional<String> id) {
        publish(new Event.Display(bundle, id));
    }

    @Override
    default void update(MimeBundle bundle, String id) {
        publish(new Event.Update(bundle, id));
    }

    @Override
    default void clear(boolean wait) {
        publish(new Event.Clear(wait));
    }

    /** Tells nothing: a request whose cells calculate draws that in a {@link ProgressPlace}. */
    @Override
    default void progress(HowFar far) {}

    @Override
    default void progressEnded() {}

    /** Returns this publisher for a silent request: it can ask, and tells nothing. */
    default Publisher silent() {
        Publisher heard = this;
        return new Publisher() {
            @Override
            public void publish(Event event) {}

            @Override
            public void print(String text) {}

            @Override
            public void printError(String text) {}

            @Override
            public Optional<String> ask(String prompt, boolean secret) {
                return heard.ask(prompt, secret);
            }
        };
    }
}

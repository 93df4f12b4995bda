package headrace.kernel.handler;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** The place in a notebook where one request shows how far it is: drawn anew each time, and emptied at the end. */
final class ProgressPlace {
    private static final MimeBundle EMPTY = new MimeBundle(Map.of("text/plain", "", "text/html", ""));

    private final Publisher publisher;
    private final String id = UUID.randomUUID().toString();
    private boolean shown;

    ProgressPlace(Publisher publisher) {
        this.publisher = publisher;
    }

    synchronized void draw(HowFar far) {
        if (shown) {
            publisher.update(far.bundle(), id);
        } else {
            shown = true;
            publisher.show(far.bundle(), Optional.of(id));
        }
    }

    synchronized void empty() {
        if (shown) {
            publisher.update(EMPTY, id);
        }
    }
}

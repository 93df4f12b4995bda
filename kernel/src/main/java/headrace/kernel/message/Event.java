package headrace.kernel.message;

import headrace.kernel.display.MimeBundle;
import java.util.Optional;

/** What the kernel tells every front end that listens. */
public interface Event {
    /** The kernel is {@code starting}, {@code busy} or {@code idle}. */
    record Status(String state) implements Event {}

    /** A cell begins to run. */
    record Input(String code, int count) implements Event {}

    /** Text was printed to {@code stdout} or {@code stderr}. */
    record Stream(String name, String text) implements Event {}

    /** Something is shown, perhaps under a name. */
    record Display(MimeBundle bundle, Optional<String> id) implements Event {}

    /** Something is shown anew in every place where this name was shown. */
    record Update(MimeBundle bundle, String id) implements Event {}

    /** What the cell has shown is taken away, at once or when the next thing is shown. */
    record Clear(boolean later) implements Event {}

    /** The last line of the cell had this value. */
    record Result(MimeBundle bundle, int count) implements Event {}

    /** The cell failed. */
    record Failure(Fault fault) implements Event {}

    /** The kernel ends. */
    record Ending(boolean restart) implements Event {}

    /** A front end began to listen to messages whose topic begins so. */
    record Welcome(String topic) implements Event {}
}

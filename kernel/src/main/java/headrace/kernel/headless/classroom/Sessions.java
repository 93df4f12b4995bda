package headrace.kernel.headless.classroom;

import headrace.kernel.headless.RunInput;
import headrace.kernel.session.Session;

/** Opens the session in which the cells of a notebook run. */
@FunctionalInterface
public interface Sessions {
    /** Returns a new session for a notebook. */
    Session of(RunInput input);
}

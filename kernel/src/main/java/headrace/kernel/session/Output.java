package headrace.kernel.session;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import java.util.Optional;

/** Where running code prints and draws, and whom it can ask. May be called by any thread that the code started. */
public interface Output {
    /** Hears nothing, and answers nothing. */
    Output UNHEARD = new Output() {
        @Override
        public void print(String text) {}

        @Override
        public void printError(String text) {}

        @Override
        public void show(MimeBundle bundle, Optional<String> id) {}

        @Override
        public void update(MimeBundle bundle, String id) {}

        @Override
        public void clear(boolean wait) {}

        @Override
        public void progress(HowFar far) {}

        @Override
        public void progressEnded() {}

        @Override
        public Optional<String> ask(String prompt, boolean secret) {
            return Optional.empty();
        }
    };

    /** Takes text as the code prints it. */
    void print(String text);

    /** Takes text as the code prints it to its error stream. */
    void printError(String text);

    /**
     * Takes something that the code asked to show.
     *
     * @param id a name under which it can be shown anew, or empty
     */
    void show(MimeBundle bundle, Optional<String> id);

    /**
     * Shows something anew in the place where this name was shown before. A bundle whose text is empty leaves the place
     * empty.
     */
    void update(MimeBundle bundle, String id);

    /**
     * Takes away what the cell has shown so far.
     *
     * @param wait whether to do so only when the next thing is shown
     */
    void clear(boolean wait);

    /**
     * Hears how far the calculation that runs has come: a few times a second, and not before it is slow. It is no
     * output of the cell: what is heard next takes its place.
     */
    void progress(HowFar far);

    /** Hears that nothing heard of how far calculations have come holds any more: nothing of it is to stay. */
    void progressEnded();

    /**
     * Returns whether what can be moved is to move here without the session too, for which all its positions are
     * computed when it is shown.
     */
    default boolean movesAlone() {
        return true;
    }

    /**
     * Asks the user for a line, and waits for it on the thread of the code that asks. When that thread is interrupted
     * the cell is being stopped: the wait must then end, with any exception.
     *
     * @param secret whether the answer is hidden while typed
     * @return the answer, or empty where nobody can be asked
     */
    Optional<String> ask(String prompt, boolean secret);
}

package headrace.kernel.terminal;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Output;
import java.util.Optional;
import java.util.function.BiFunction;

/** Gives what a cell prints and shows to the screen, and its questions to the user. */
final class ShellOutput implements Output {
    private final Screen screen;
    private final BiFunction<String, Boolean, Optional<String>> asking;

    ShellOutput(Screen screen, BiFunction<String, Boolean, Optional<String>> asking) {
        this.screen = screen;
        this.asking = asking;
    }

    @Override
    public void print(String text) {
        screen.printed(text, false);
    }

    @Override
    public void printError(String text) {
        screen.printed(text, true);
    }

    @Override
    public void show(MimeBundle bundle, Optional<String> id) {
        if (id.isPresent() && isPassing(bundle)) {
            screen.passing(bundle);
        } else {
            screen.shown(bundle);
        }
    }

    /** What is shown anew is written again: only a single line stays in its place. */
    @Override
    public void update(MimeBundle bundle, String id) {
        show(bundle, Optional.of(id));
    }

    private static boolean isPassing(MimeBundle bundle) {
        return bundle.shown().isEmpty() && bundle.text().lines().count() <= 1;
    }

    @Override
    public void progress(HowFar far) {
        screen.progress(far);
    }

    @Override
    public void progressEnded() {
        screen.freshLine();
    }

    /** What was written to a terminal stays there. */
    @Override
    public void clear(boolean wait) {}

    /** Nothing moves in a terminal. */
    @Override
    public boolean movesAlone() {
        return false;
    }

    @Override
    public Optional<String> ask(String prompt, boolean secret) {
        screen.freshLine();
        return asking.apply(prompt, secret);
    }
}

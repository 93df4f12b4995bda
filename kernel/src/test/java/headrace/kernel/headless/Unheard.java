package headrace.kernel.headless;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Output;
import java.util.Optional;

/** Hears nothing of what a cell prints and shows, and answers nothing. */
class Unheard implements Output {
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
    public Optional<String> ask(String prompt, boolean secret) {
        return Optional.empty();
    }
}

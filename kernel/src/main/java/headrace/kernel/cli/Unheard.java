package headrace.kernel.cli;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Output;
import java.util.Optional;

/** Where code prints and draws that nobody is to hear of. */
final class Unheard implements Output {
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

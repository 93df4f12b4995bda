package headrace.kernel.cli;

import headrace.kernel.headless.RunInput;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Sessions that find their files beside the notebook and leave their own where nobody needs them. */
final class ExerciseSessions {
    private ExerciseSessions() {}

    static Session of(RunInput input) {
        try {
            Path scratch = Files.createTempDirectory("headrace-exercises");
            scratch.toFile().deleteOnExit();
            Path beside = input.file().toAbsolutePath().getParent();
            return GroovySession.in(beside, scratch, input.language());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

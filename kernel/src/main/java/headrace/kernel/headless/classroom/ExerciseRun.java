package headrace.kernel.headless.classroom;

import headrace.kernel.headless.Limits;
import headrace.kernel.headless.RunInput;
import headrace.kernel.session.Fault;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.lesson.Gradebook;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/**
 * One run of a notebook for the sake of its exercises: nothing is shown or written. A cell that fails does not keep
 * those after it from running.
 *
 * @param book what was posed and answered
 * @param failures what failed, such as {@code cell 3: MissingProperty}
 */
record ExerciseRun(Gradebook book, List<String> failures) {
    static ExerciseRun of(RunInput input, Sessions sessions, Optional<Duration> most) {
        Gradebook book = new Gradebook();
        book.choose();
        List<String> failures = new ArrayList<>();
        try (Session session = sessions.of(input);
                Limits limits = new Limits(most, session)) {
            int number = 0;
            for (int i = 0; i < input.notebook().cells().size(); i++) {
                if (RunInput.runs(input.notebook().cells().get(i))) {
                    String cell = "cell " + ++number + ": ";
                    run(session, limits, input.codeToRun(i)).ifPresent(failure -> failures.add(cell + failure));
                }
            }
        } finally {
            Gradebook.chooseNone();
        }
        return new ExerciseRun(book, List.copyOf(failures));
    }

    private static Optional<String> run(Session session, Limits limits, String code) {
        AtomicReference<Outcome> outcome = new AtomicReference<>();
        boolean late = limits.passed(() -> outcome.set(session.run(code, true, Output.UNHEARD)));
        if (late) {
            return Optional.of("took too long");
        }
        return outcome.get() instanceof Outcome.Failed failed ? Optional.of(worded(failed.fault())) : Optional.empty();
    }

    private static String worded(Fault fault) {
        return fault.lines().isEmpty() ? fault.name() : fault.lines().get(0);
    }
}

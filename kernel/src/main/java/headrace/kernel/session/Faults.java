package headrace.kernel.session;

import headrace.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Words a failure for the engineer who wrote the cell. */
final class Faults {
    private final CellSources sources;

    Faults(CellSources sources) {
        this.sources = sources;
    }

    Fault of(Throwable cause) {
        String name = cause instanceof Refusal refusal
                ? refusal.problem().anchor()
                : cause.getClass().getSimpleName();
        String message = Objects.requireNonNullElse(cause.getMessage(), "no further message");
        List<String> lines = new ArrayList<>(message.lines().toList());
        for (StackTraceElement frame : cause.getStackTrace()) {
            sources.ofFile(frame.getFileName()).ifPresent(source -> {
                lines.add(source.label() + ", line " + frame.getLineNumber() + ":");
                lines.add("    " + source.line(frame.getLineNumber()).strip());
            });
        }
        return new Fault(name, message, lines);
    }
}

package headrace.kernel.session.groovy;

import headrace.kernel.session.Fault;
import headrace.kernel.session.groovy.CellSources.Source;
import headrace.kernel.session.source.Ending;
import headrace.kernel.session.source.Flaw;
import headrace.problem.Nearest;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.codehaus.groovy.control.CompilationFailedException;
import org.codehaus.groovy.control.MultipleCompilationErrorsException;
import org.codehaus.groovy.control.messages.ExceptionMessage;
import org.codehaus.groovy.control.messages.Message;
import org.codehaus.groovy.control.messages.SyntaxErrorMessage;
import org.codehaus.groovy.syntax.SyntaxException;

/** Words why a cell did not compile: each mistake with the cell's line and a caret under the column. */
final class CompileFaults {
    private static final int MOST = 5;
    private static final String UNTOLD = "The cell does not compile";
    private static final Pattern PLACE = Pattern.compile("\\s*@ line -?\\d+, column -?\\d+\\.?\\s*$");
    private static final Pattern UNKNOWN_CLASS = Pattern.compile("unable to resolve class ([\\w.]+)(?s:.*)");
    private static final Pattern UNREADABLE = Pattern.compile("(Unexpected|Missing|Invalid|Mismatched)\\b(?s:.*)");
    private static final Pattern UNEXPECTED = Pattern.compile("Unexpected (input|character): '(.*)'");

    private final CellSources sources;
    private final Collection<String> types;

    /**
     * Creates the wording.
     *
     * @param types the names of classes that a cell may use, for what is misspelt
     */
    CompileFaults(CellSources sources, Collection<String> types) {
        this.sources = sources;
        this.types = types;
    }

    Fault of(CompilationFailedException failure) {
        List<String> lines = new ArrayList<>();
        for (Message error : errors(failure)) {
            List<String> mistake = mistake(error);
            if (!lines.containsAll(mistake)) {
                lines.addAll(mistake);
            }
        }
        if (lines.isEmpty()) {
            lines.addAll(sources.relabelled(String.valueOf(failure.getMessage()))
                    .lines()
                    .toList());
        }
        String anchor = SessionProblem.CELL_NOT_UNDERSTOOD.anchor();
        String first = lines.get(0);
        lines.add("[" + anchor + "]");
        return new Fault(anchor, first, lines);
    }

    private static List<? extends Message> errors(CompilationFailedException failure) {
        if (failure instanceof MultipleCompilationErrorsException several
                && several.getErrorCollector().getErrors() != null) {
            List<? extends Message> all = several.getErrorCollector().getErrors();
            return all.subList(0, Math.min(MOST, all.size()));
        }
        return List.of();
    }

    private List<String> mistake(Message error) {
        if (error instanceof SyntaxErrorMessage syntax) {
            return mistake(syntax.getCause());
        }
        if (error instanceof ExceptionMessage exception) {
            String message =
                    sources.relabelled(String.valueOf(exception.getCause().getMessage()));
            return message.lines().toList();
        }
        return List.of(UNTOLD);
    }

    private List<String> mistake(SyntaxException cause) {
        String text = text(cause);
        Optional<Source> source = sources.ofFile(cause.getSourceLocator());
        if (source.isEmpty()) {
            return text.lines().toList();
        }
        String code = source.get().code();
        Optional<Flaw> flaw = UNREADABLE.matcher(text).matches() ? unclosed(code) : Optional.empty();
        int start = flaw.map(Flaw::start).orElseGet(() -> offset(code, cause.getStartLine(), cause.getStartColumn()));
        List<String> lines =
                new ArrayList<>(flaw.map(Flaw::what).orElse(text).lines().toList());
        if (cause.getStartLine() > 0) {
            lines.addAll(source.get().shown(start));
        }
        return lines;
    }

    /** What was never closed explains more than the place where reading got stuck. */
    private static Optional<Flaw> unclosed(String code) {
        return Flaw.of(code)
                .or(() -> Ending.of(code) == Ending.OPEN
                        ? Optional.of(new Flaw(
                                "The cell ends in the middle",
                                code.stripTrailing().length()))
                        : Optional.empty());
    }

    private static int offset(String code, int line, int column) {
        int start = 0;
        for (int i = 1; i < line && code.indexOf('\n', start) >= 0; i++) {
            start = code.indexOf('\n', start) + 1;
        }
        return Math.min(code.length(), start + Math.max(0, column - 1));
    }

    private String text(SyntaxException cause) {
        if (cause.getOriginalMessage() == null) {
            return UNTOLD;
        }
        String plain = sources.relabelled(
                PLACE.matcher(cause.getOriginalMessage()).replaceFirst("").strip());
        Matcher unknown = UNKNOWN_CLASS.matcher(plain);
        if (unknown.matches()) {
            return unknownClass(unknown.group(1));
        }
        Matcher unexpected = UNEXPECTED.matcher(plain);
        return unexpected.matches() ? unexpected(unexpected.group(2)) : plain;
    }

    /** Groovy shows all that it had read, with line breaks written out; the last of it is what it did not expect. */
    private static String unexpected(String read) {
        String[] parts = read.split("\\\\n");
        String last = parts.length == 0 ? "" : parts[parts.length - 1].strip();
        return "Unexpected: " + (last.isEmpty() ? "the end of the line" : last) + hint(last);
    }

    /** Texts that come from a letter bring its marks with them. */
    private static String hint(String last) {
        if (last.matches("[“”„«»‘’‚]")) {
            return " (a text stands between straight marks: ' or \")";
        }
        return last.matches("[–—−]") ? " (a minus is a plain -)" : "";
    }

    private String unknownClass(String name) {
        List<String> near = Nearest.to(name, types);
        return "There is no class '" + name + "'"
                + (near.isEmpty() ? "" : "; the nearest " + (near.size() == 1 ? "is " : "are ") + Nearest.either(near));
    }
}

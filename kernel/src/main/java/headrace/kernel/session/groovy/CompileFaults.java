package headrace.kernel.session.groovy;

import headrace.kernel.session.Fault;
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

    private static final Pattern UNKNOWN_CLASS = Pattern.compile("unable to resolve class ([\\w.]+)(?s:.*)");

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
        List<? extends Message> errors = failure instanceof MultipleCompilationErrorsException several
                        && several.getErrorCollector().getErrors() != null
                ? several.getErrorCollector().getErrors()
                : List.of();
        String first = "";
        for (Message error : errors.subList(0, Math.min(MOST, errors.size()))) {
            List<String> mistake = mistake(error);
            if (first.isEmpty()) {
                first = mistake.get(0);
            }
            if (!lines.containsAll(mistake)) {
                lines.addAll(mistake);
            }
        }
        if (lines.isEmpty()) {
            first = sources.relabelled(String.valueOf(failure.getMessage()));
            lines.addAll(first.lines().toList());
        }
        String anchor = SessionProblem.CELL_NOT_UNDERSTOOD.anchor();
        lines.add("[" + anchor + "]");
        return new Fault(anchor, first, lines);
    }

    private List<String> mistake(Message error) {
        if (error instanceof SyntaxErrorMessage syntax) {
            return mistake(syntax.getCause());
        }
        if (error instanceof ExceptionMessage exception) {
            return sources.relabelled(String.valueOf(exception.getCause().getMessage()))
                    .lines()
                    .toList();
        }
        return List.of("The cell does not compile");
    }

    private List<String> mistake(SyntaxException cause) {
        List<String> lines =
                new ArrayList<>(sources.relabelled(text(cause)).lines().toList());
        Optional<CellSources.Source> source = sources.ofFile(cause.getSourceLocator());
        if (source.isPresent() && cause.getStartLine() > 0) {
            String line = source.get().line(cause.getStartLine());
            lines.add(source.get().label() + ", line " + cause.getStartLine() + ":");
            lines.add("    " + line);
            lines.add("    " + caret(line, cause.getStartColumn()));
        }
        return lines;
    }

    private String text(SyntaxException cause) {
        String text = cause.getOriginalMessage();
        if (text == null) {
            return "The cell does not compile";
        }
        String plain = text.replaceFirst("\\s*@ line -?\\d+, column -?\\d+\\.?\\s*$", "")
                .strip();
        Matcher unknown = UNKNOWN_CLASS.matcher(plain);
        return unknown.matches() ? unknownClass(unknown.group(1)) : plain;
    }

    private String unknownClass(String name) {
        List<String> near = Nearest.to(name, types);
        return "There is no class '" + name + "'"
                + (near.isEmpty() ? "" : "; the nearest " + (near.size() == 1 ? "is " : "are ") + Nearest.either(near));
    }

    /** Returns a caret under a column, counted from 1; tabs stay tabs, so that it stands right under them too. */
    static String caret(String line, int column) {
        int before = Math.max(0, Math.min(line.length(), column - 1));
        return line.substring(0, before).replaceAll("[^\\t]", " ") + "^";
    }
}

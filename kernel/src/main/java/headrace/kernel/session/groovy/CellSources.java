package headrace.kernel.session.groovy;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The texts of the cells that have run, by the names of the files that Groovy believes they are. */
final class CellSources {
    private static final int MOST_CALLS = 10;
    private static final Pattern MACHINERY = Pattern.compile(
            "jdk\\.|sun\\.|java\\.lang\\.(invoke|reflect)\\.|groovy\\.|org\\.(codehaus|apache)\\.groovy\\.");
    private static final Pattern CLASS = Pattern.compile("\\b((?:Cell|Aside)_\\d+)(?:\\.groovy|\\$_\\w+)?\\b");

    /**
     * The text of a cell.
     *
     * @param label what the user calls it
     * @param code its text
     */
    record Source(String label, String code) {
        /** Returns a line, counted from 1, or empty if there is none. */
        String line(int number) {
            return code.lines().skip(Math.max(0, number - 1)).findFirst().orElse("");
        }
    }

    private final Map<String, Source> byFile = new ConcurrentHashMap<>();

    void put(String className, String label, String code) {
        byFile.put(className + ".groovy", new Source(label, code));
    }

    void remove(String className) {
        byFile.remove(className + ".groovy");
    }

    /** Returns the cell that was compiled under a file name, if it is one. */
    Optional<Source> ofFile(String file) {
        return file == null ? Optional.empty() : Optional.ofNullable(byFile.get(file));
    }

    /** Returns the lines of cells among these frames, the innermost first, without those of the machinery. */
    List<String> trace(StackTraceElement[] frames) {
        List<String> lines = new ArrayList<>();
        String before = "";
        int calls = 0;
        Deque<String> called = new ArrayDeque<>();
        for (StackTraceElement frame : frames) {
            Optional<Source> source = ofFile(frame.getFileName());
            String place = frame.getFileName() + ":" + frame.getLineNumber();
            if (source.isEmpty() || frame.getLineNumber() <= 0 || place.equals(before)) {
                called.push(frame.getMethodName());
                continue;
            }
            before = place;
            if (++calls > MOST_CALLS) {
                lines.add("… and so on");
                break;
            }
            lines.add((calls == 1 ? "" : "called from ") + source.get().label() + ", line " + frame.getLineNumber()
                    + ":");
            String line = source.get().line(frame.getLineNumber()).strip();
            lines.add("    " + line);
            lines.add("    " + " ".repeat(column(line, called)) + "^");
            called.clear();
            called.push(frame.getMethodName());
        }
        return lines;
    }

    /** A frame knows its line alone: the column is that of what the line had called, or else of its beginning. */
    private static int column(String line, Iterable<String> called) {
        for (String name : called) {
            Matcher word = Pattern.compile("\\b" + Pattern.quote(name) + "\\b").matcher(line);
            if (word.find()) {
                return word.start();
            }
        }
        return 0;
    }

    /** Returns the method, outside of cells and machinery, that the innermost cell had called. */
    String calledFromCell(StackTraceElement[] frames) {
        String called = "code that it does not show";
        for (StackTraceElement frame : frames) {
            if (ofFile(frame.getFileName()).isPresent()) {
                break;
            }
            if (!MACHINERY.matcher(frame.getClassName()).lookingAt()) {
                called = frame.getClassName() + "." + frame.getMethodName();
            }
        }
        return called;
    }

    /** Returns a message in which the classes that cells are compiled to bear the cells' own names. */
    String relabelled(String message) {
        return CLASS.matcher(message)
                .replaceAll(found -> Matcher.quoteReplacement(
                        ofFile(found.group(1) + ".groovy").map(Source::label).orElse(found.group())));
    }
}

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

/** The texts of the cells that have run, by the names of the files that their compilers believe they are. */
final class CellSources {
    private static final int MOST_CALLS = 10;
    private static final String GROOVY = ".groovy";
    private static final Pattern MACHINERY = Pattern.compile(
            "jdk\\.|sun\\.|java\\.lang\\.(invoke|reflect)\\.|groovy\\.|org\\.(codehaus|apache)\\.groovy\\.");
    private static final Pattern CLASS =
            Pattern.compile("\\b(?:cells\\d*\\.)?((?:Cell|Aside)_\\d+)(?:\\.groovy|\\$_\\w+)?\\b");

    /** What the compilers put before the name of a class of the user's. */
    private static final Pattern FRONT =
            Pattern.compile("\\bcells\\d*\\.(?=\\w)|\\bREPL\\.\\$JShell\\$\\w+[$.](?=\\w)");

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

        /** Returns the line of a place with a caret under it, ready to be shown. */
        List<String> shown(int offset) {
            int start = Math.max(0, Math.min(offset, code.length()));
            int number = 1
                    + (int) code.substring(0, start)
                            .chars()
                            .filter(each -> each == '\n')
                            .count();
            int column = start - code.lastIndexOf('\n', start - 1) - 1;
            String line = line(number);
            int before = Math.max(0, Math.min(line.length(), column));
            // tabs stay tabs, so that the caret stands right under them too
            String caret = line.substring(0, before).replaceAll("[^\\t]", " ") + "^";
            return List.of(label + ", line " + number + ":", "    " + line, "    " + caret);
        }
    }

    /**
     * A file of a compiler.
     *
     * @param source the cell it was made of
     * @param shift how many lines later a line of it stands there
     * @param first the line before which none stands: the compiler may begin with lines of its own
     */
    private record Made(Source source, int shift, int first) {
        int line(int number) {
            return number <= 0 ? number : Math.max(first, number + shift);
        }
    }

    private final Map<String, Made> byFile = new ConcurrentHashMap<>();

    void put(String className, String label, String code) {
        byFile.put(className + GROOVY, new Made(new Source(label, code), 0, 1));
    }

    /** Notes that a file was made of a part of a cell. */
    void place(String file, String className, int shift, int first) {
        byFile.put(file, new Made(byFile.get(className + GROOVY).source(), shift, first));
    }

    void remove(String className) {
        Made gone = byFile.remove(className + GROOVY);
        byFile.values().removeIf(each -> each.source() == gone.source());
    }

    /** Returns the cell of a class. */
    Source of(String className) {
        return byFile.get(className + GROOVY).source();
    }

    /** Returns the cell that was compiled under a file name, if it is one. */
    Optional<Source> ofFile(String file) {
        return made(file).map(Made::source);
    }

    private Optional<Made> made(String file) {
        return file == null ? Optional.empty() : Optional.ofNullable(byFile.get(file));
    }

    /** Returns the lines of cells among these frames, the innermost first, without those of the machinery. */
    List<String> trace(StackTraceElement[] frames) {
        List<String> lines = new ArrayList<>();
        String before = "";
        int calls = 0;
        Deque<String> called = new ArrayDeque<>();
        for (StackTraceElement frame : frames) {
            Optional<Made> made = made(frame.getFileName());
            int number = made.map(each -> each.line(frame.getLineNumber())).orElse(0);
            String place = frame.getFileName() + ":" + number;
            if (made.isEmpty() || number <= 0 || place.equals(before)) {
                called.push(frame.getMethodName().equals("<init>") ? simple(frame) : frame.getMethodName());
                continue;
            }
            before = place;
            if (++calls > MOST_CALLS) {
                lines.add("… and so on");
                break;
            }
            Source source = made.get().source();
            lines.add((calls == 1 ? "" : "called from ") + source.label() + ", line " + number + ":");
            String line = source.line(number).strip();
            lines.add("    " + line);
            lines.add("    " + " ".repeat(column(line, called)) + "^");
            called.clear();
            called.push(frame.getMethodName());
        }
        return lines;
    }

    private static String simple(StackTraceElement frame) {
        return frame.getClassName().replaceFirst(".*[.$]", "");
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

    /** Returns a message in which the classes that cells are compiled to bear the names that the user gave them. */
    String relabelled(String message) {
        String cells = CLASS.matcher(message)
                .replaceAll(found -> Matcher.quoteReplacement(
                        ofFile(found.group(1) + GROOVY).map(Source::label).orElse(found.group())));
        return bare(cells);
    }

    /** Returns a text in which the classes of the user's bear their own names alone. */
    static String bare(String text) {
        return FRONT.matcher(text).replaceAll("");
    }
}

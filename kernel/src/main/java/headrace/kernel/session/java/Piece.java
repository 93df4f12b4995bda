package headrace.kernel.session.java;

import headrace.kernel.session.Completeness;
import headrace.kernel.session.Completeness.State;
import headrace.kernel.session.source.Indents;
import java.util.ArrayList;
import java.util.List;
import jdk.jshell.ErroneousSnippet;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;

/**
 * A piece of a cell that the shell takes at once: a statement, a declaration, an import.
 *
 * @param source its text, with the semicolon that the user may leave out
 * @param start where it begins in the cell
 * @param firstLine the line of the cell on which its text begins, from 1
 * @param state whether it can be run
 */
record Piece(String source, int start, int firstLine, SourceCodeAnalysis.Completeness state) {
    /** Divides a cell. What cannot be divided any further because it is broken is the last piece. */
    static List<Piece> of(String code, SourceCodeAnalysis analysis) {
        List<Piece> pieces = new ArrayList<>();
        String rest = code;
        while (!rest.isBlank()) {
            CompletionInfo info = analysis.analyzeCompletion(rest);
            if (info.completeness() == SourceCodeAnalysis.Completeness.EMPTY) {
                break; // comments
            }
            boolean whole = info.completeness().isComplete() && info.source() != null;
            String source = whole ? info.source() : rest;
            int start = code.length() - rest.length();
            int line = 1
                    + (int) code.substring(0, start)
                            .chars()
                            .filter(each -> each == '\n')
                            .count();
            pieces.add(new Piece(source, start, line, info.completeness()));
            rest = whole && info.remaining() != null ? info.remaining() : "";
        }
        return pieces;
    }

    /** Returns the line of the cell on which a part of this begins, from 1. */
    int lineOf(String part) {
        int place = Math.max(0, source.indexOf(part.strip().replaceFirst(";$", "")));
        return firstLine
                + (int) source.substring(0, place)
                        .chars()
                        .filter(each -> each == '\n')
                        .count();
    }

    /** Returns whether it can never run as it stands. */
    boolean isBroken() {
        return state == SourceCodeAnalysis.Completeness.UNKNOWN
                || state == SourceCodeAnalysis.Completeness.DEFINITELY_INCOMPLETE;
    }

    /** What counts its brackets right may still be no Java. */
    private static boolean isErroneous(String source, SourceCodeAnalysis analysis) {
        return analysis.sourceToSnippets(source).stream().anyMatch(ErroneousSnippet.class::isInstance);
    }

    static Completeness completeness(String code, SourceCodeAnalysis analysis) {
        String rest = code;
        while (!rest.isBlank()) {
            CompletionInfo info = analysis.analyzeCompletion(rest);
            switch (info.completeness()) {
                case DEFINITELY_INCOMPLETE, CONSIDERED_INCOMPLETE -> {
                    return new Completeness(State.INCOMPLETE, Indents.after(code));
                }
                case UNKNOWN -> {
                    return new Completeness(State.INVALID, "");
                }
                default -> {
                    if (info.source() != null && isErroneous(info.source(), analysis)) {
                        return new Completeness(State.INVALID, "");
                    }
                    rest = info.remaining() == null ? "" : info.remaining();
                }
            }
        }
        return new Completeness(State.COMPLETE, "");
    }
}

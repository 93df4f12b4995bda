package headrace.kernel.session.source;

/**
 * A piece of a cell's text.
 *
 * @param kind what it is
 * @param text the piece itself
 * @param start where it begins, in UTF-16 units
 * @param closed whether it has its end: false for a string or comment that the text breaks off in
 */
public record Token(Kind kind, String text, int start, boolean closed) {
    /** What a token is. */
    public enum Kind {
        /** A name or keyword. */
        WORD,
        /** A number. */
        NUMBER,
        /** A string within one line. */
        STRING,
        /** A string that may go on over lines. */
        LONG_STRING,
        /** A comment. */
        COMMENT,
        /** The end of a line. */
        NEWLINE,
        /** A bracket that opens, or the start of an expression inside a string. */
        OPEN,
        /** A bracket that closes. */
        CLOSE,
        /** Anything else, such as {@code +} or {@code ->}. */
        OPERATOR
    }

    /** Returns where it ends. */
    public int end() {
        return start + text.length();
    }

    /** Returns whether it is this word, bracket or operator. */
    public boolean is(String other) {
        return text.equals(other) && kind != Kind.STRING && kind != Kind.LONG_STRING && kind != Kind.COMMENT;
    }

    boolean isBlank() {
        return kind == Kind.NEWLINE || kind == Kind.COMMENT;
    }
}

package headrace.kernel.session.source;

import headrace.kernel.session.source.Token.Kind;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;

/**
 * Divides the text of a Groovy cell into tokens, whatever state it is in.
 *
 * <p>The text of a string that holds expressions is divided into the pieces of string around them. A slash begins a
 * string where an operand is expected, else it divides.
 */
public final class Tokens {
    private static final Set<String> BEFORE_OPERAND =
            Set.of("return", "in", "as", "instanceof", "case", "throw", "assert", "else", "do", "new", "yield");
    private static final List<String> OPERATORS = List.of(
            ">>>=", "<=>", "==~", "===", "!==", "**=", "<<=", ">>=", "?.[", "..<", "<..", "->", "?.", "*.", ".&", "::",
            "?:", "?=", "=~", "==", "!=", "<=", ">=", "&&", "||", "++", "--", "+=", "-=", "*=", "/=", "%=", "&=", "|=",
            "^=", "**", "..", "<<", ">>", ".@", "??");

    private final String text;
    private final List<Token> tokens = new ArrayList<>();

    /** The strings whose expressions are being read, each by its quote; between them the braces that are open. */
    private final Deque<String> nesting = new ArrayDeque<>();

    private int at;

    private Tokens(String text) {
        this.text = text;
    }

    /** Returns the tokens of a text. */
    public static List<Token> of(String text) {
        Tokens tokens = new Tokens(text);
        while (tokens.at < text.length()) {
            tokens.next();
        }
        return List.copyOf(tokens.tokens);
    }

    private void next() {
        char here = text.charAt(at);
        if (here == '\n') {
            add(Kind.NEWLINE, 1);
        } else if (here == '\\'
                && at + 1 < text.length()
                && (text.charAt(at + 1) == '\n' || text.charAt(at + 1) == '\r')) {
            at += text.startsWith("\r\n", at + 1) ? 3 : 2;
        } else if (Character.isWhitespace(here)) {
            at++;
        } else if (text.startsWith("//", at) || at == 0 && text.startsWith("#!")) {
            int end = text.indexOf('\n', at);
            add(Kind.COMMENT, (end < 0 ? text.length() : end) - at);
        } else if (text.startsWith("/*", at)) {
            int end = text.indexOf("*/", at + 2);
            add(Kind.COMMENT, (end < 0 ? text.length() : end + 2) - at, end >= 0);
        } else if (quote() != null) {
            string(quote(), quote().length());
        } else if (Character.isJavaIdentifierStart(here)) {
            add(Kind.WORD, span(Character::isJavaIdentifierPart));
        } else if (here >= '0' && here <= '9') {
            add(Kind.NUMBER, number());
        } else {
            bracketOrOperator(here);
        }
    }

    private void bracketOrOperator(char here) {
        if ("([{".indexOf(here) >= 0) {
            if (here == '{') {
                nesting.push("{");
            }
            add(Kind.OPEN, 1);
        } else if (here == '}' && !nesting.isEmpty()) {
            String opened = nesting.pop();
            add(Kind.CLOSE, 1);
            if (!opened.equals("{")) {
                string(opened, 0);
            }
        } else if (")]}".indexOf(here) >= 0) {
            add(Kind.CLOSE, 1);
        } else {
            String operator = OPERATORS.stream()
                    .filter(each -> text.startsWith(each, at))
                    .findFirst()
                    .orElse(text.substring(at, at + 1));
            add(Kind.OPERATOR, operator.length());
        }
    }

    /** Returns the quote that a string here begins with, or null. */
    private String quote() {
        for (String each : List.of("'''", "\"\"\"", "'", "\"")) {
            if (text.startsWith(each, at)) {
                return each;
            }
        }
        if (operandExpected()) {
            return text.startsWith("$/", at) ? "$/" : text.startsWith("/", at) ? "/" : null;
        }
        return null;
    }

    private boolean operandExpected() {
        Token before = tokens.isEmpty() ? null : tokens.get(tokens.size() - 1);
        return before == null
                || switch (before.kind()) {
                    case WORD -> BEFORE_OPERAND.contains(before.text()) || (wordThenString(before));
                    case NUMBER, STRING, LONG_STRING, CLOSE -> false;
                    case OPERATOR -> !before.is("++") && !before.is("--");
                    case OPEN, NEWLINE, COMMENT -> true;
                };
    }

    /**
     * A command such as {@code println /a b/}: a blank before the first slash, none after it, and another in the line.
     */
    private boolean wordThenString(Token before) {
        int end = text.indexOf('\n', at);
        int other = text.indexOf('/', at + 1);
        return before.end() < at
                && at + 1 < text.length()
                && !Character.isWhitespace(text.charAt(at + 1))
                && other > 0
                && (end < 0 || other < end);
    }

    /** Reads a string from its quote, or from behind an expression in it, to its end or to its next expression. */
    private void string(String quote, int opening) {
        int start = at;
        String close = quote.equals("$/") ? "/$" : quote;
        boolean expressions = !quote.startsWith("'");
        boolean oneLine = quote.equals("'") || quote.equals("\"");
        Kind kind = oneLine ? Kind.STRING : Kind.LONG_STRING;
        int i = at + opening;
        while (i < text.length()) {
            if (quote.equals("$/") && (text.startsWith("$$", i) || text.startsWith("$/", i))) {
                i += 2;
            } else if (text.charAt(i) == '\\' && !quote.equals("$/")) {
                i += quote.equals("/") && !text.startsWith("\\/", i) ? 1 : 2;
            } else if (text.startsWith(close, i)) {
                add(kind, i + close.length() - start);
                return;
            } else if (expressions && text.startsWith("${", i)) {
                add(kind, i - start);
                nesting.push(quote);
                add(Kind.OPEN, 2);
                return;
            } else if (oneLine && text.charAt(i) == '\n') {
                break;
            } else {
                i++;
            }
        }
        add(kind, Math.min(i, text.length()) - start, false);
    }

    private int number() {
        int i = at + span(each -> Character.isLetterOrDigit(each) || each == '_');
        boolean fraction = i + 1 < text.length() && text.charAt(i) == '.' && Character.isDigit(text.charAt(i + 1));
        if (fraction) {
            i++;
            while (i < text.length() && (Character.isLetterOrDigit(text.charAt(i)) || text.charAt(i) == '_')) {
                i++;
            }
        }
        char last = Character.toLowerCase(text.charAt(i - 1));
        boolean signed = last == 'e' && i < text.length() && "+-".indexOf(text.charAt(i)) >= 0;
        if (signed && !text.startsWith("0x", at)) {
            i++;
            while (i < text.length() && Character.isLetterOrDigit(text.charAt(i))) {
                i++;
            }
        }
        return i - at;
    }

    private int span(IntPredicate part) {
        int i = at;
        while (i < text.length() && part.test(text.charAt(i))) {
            i++;
        }
        return i - at;
    }

    private void add(Kind kind, int length) {
        add(kind, length, true);
    }

    private void add(Kind kind, int length, boolean closed) {
        if (length > 0) {
            tokens.add(new Token(kind, text.substring(at, at + length), at, closed));
            at += length;
        }
    }
}

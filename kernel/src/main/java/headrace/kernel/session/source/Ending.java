package headrace.kernel.session.source;

import headrace.kernel.session.source.Token.Kind;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** How a cell's text ends: whether something in it is still open. */
public enum Ending {
    /** Nothing is open. */
    CLOSED,
    /** Something is open that more lines can close. */
    OPEN,
    /** Something is open that no more lines can close, or closed that was never opened. */
    BROKEN;

    private static final Set<String> AWAITING_OPERAND = Set.of(
            "def",
            "new",
            "in",
            "as",
            "instanceof",
            "throw",
            "assert",
            "case",
            "import",
            "package",
            "class",
            "interface",
            "enum",
            "record",
            "trait",
            "extends",
            "implements",
            "throws",
            "static",
            "final",
            "public",
            "private",
            "protected",
            "abstract",
            "else",
            "do",
            "try",
            "finally",
            "catch",
            "if",
            "for",
            "while",
            "switch",
            "@");
    private static final Set<String> HEADED = Set.of("if", "while", "for", "switch", "catch", "synchronized");
    private static final Set<String> TYPES = Set.of("class", "interface", "enum", "record", "trait", "@interface");
    private static final Map<String, String> CLOSING = Map.of("(", ")", "[", "]", "?.[", "]", "{", "}", "${", "}");

    /** Returns how a text ends. */
    public static Ending of(String text) {
        return of(Tokens.of(text));
    }

    private static Ending of(List<Token> all) {
        for (Token token : all) {
            if (!token.closed()) {
                return token.kind() == Kind.STRING ? BROKEN : OPEN;
            }
        }
        List<Token> tokens = new ArrayList<>(all);
        tokens.removeIf(Token::isBlank);
        Deque<Integer> opened = new ArrayDeque<>();
        int[] partners = new int[tokens.size()];
        for (int i = 0; i < tokens.size(); i++) {
            if (tokens.get(i).kind() == Kind.OPEN) {
                opened.push(i);
            } else if (tokens.get(i).kind() == Kind.CLOSE) {
                if (opened.isEmpty()
                        || !CLOSING.get(tokens.get(opened.peek()).text())
                                .equals(tokens.get(i).text())) {
                    return BROKEN;
                }
                partners[i] = opened.pop();
            }
        }
        return opened.isEmpty() && !awaitsMore(tokens, partners) ? CLOSED : OPEN;
    }

    private static boolean awaitsMore(List<Token> tokens, int[] partners) {
        int last = tokens.size() - 1;
        if (last < 0) {
            return false;
        }
        Token end = tokens.get(last);
        Token before = last > 0 ? tokens.get(last - 1) : null;
        return switch (end.kind()) {
            case OPERATOR -> operatorAwaits(end, before, tokens);
            case WORD ->
                AWAITING_OPERAND.contains(end.text()) && !(before != null && before.is("."))
                        || before != null && TYPES.contains(before.text())
                        || marks(tokens, last);
            case CLOSE ->
                end.is(")") ? headAwaits(tokens, partners, last) : end.is("}") && bodyAwaits(tokens, partners, last);
            default -> false;
        };
    }

    private static boolean operatorAwaits(Token end, Token before, List<Token> tokens) {
        boolean operates = "+-*/%=<>&|^!~?:.,@\\".indexOf(end.text().charAt(0)) >= 0;
        if (!operates || end.is("++") || end.is("--")) {
            return false;
        }
        boolean starImport = end.is("*")
                && before != null
                && before.is(".")
                && tokens.stream().anyMatch(each -> each.is("import"));
        return !starImport;
    }

    /** A condition without what it decides, or an annotation without what it marks. */
    private static boolean headAwaits(List<Token> tokens, int[] partners, int last) {
        int head = partners[last] - 1;
        if (head < 0) {
            return false;
        }
        boolean endsLoop = tokens.get(head).is("while")
                && head > 0
                && tokens.get(head - 1).is("}")
                && partners[head - 1] > 0
                && tokens.get(partners[head - 1] - 1).is("do");
        boolean member = head > 0 && tokens.get(head - 1).is(".");
        return HEADED.contains(tokens.get(head).text()) && !endsLoop && !member || marks(tokens, head);
    }

    /** Returns whether the name that ends there, dotted or not, is that of an annotation. */
    private static boolean marks(List<Token> tokens, int last) {
        int at = last;
        while (at > 1 && tokens.get(at - 1).is(".")) {
            at -= 2;
        }
        return at > 0 && tokens.get(at - 1).is("@");
    }

    /** A {@code try} without what follows when it fails, or a {@code do} without its condition. */
    private static boolean bodyAwaits(List<Token> tokens, int[] partners, int last) {
        int head = partners[last] - 1;
        return head >= 0 && (tokens.get(head).is("try") || tokens.get(head).is("do"));
    }
}

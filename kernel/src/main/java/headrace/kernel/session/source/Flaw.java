package headrace.kernel.session.source;

import headrace.kernel.session.source.Token.Kind;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is wrong with a text that is not closed, said of the place where it began rather than of the place where the
 * reading got stuck.
 *
 * @param what what is wrong, in a sentence without its full stop
 * @param start where, in UTF-16 units
 */
public record Flaw(String what, int start) {
    private static final Map<String, String> CLOSING = Map.of("(", ")", "[", "]", "{", "}", "${", "}");

    /** Returns the first flaw of a text, if it has one that can be told without knowing the language. */
    public static Optional<Flaw> of(String text) {
        List<Token> tokens = Tokens.of(text);
        Optional<Flaw> open = tokens.stream()
                .filter(token -> !token.closed())
                .findFirst()
                .map(token -> new Flaw(unclosed(token.kind()), token.start()));
        return open.or(() -> brackets(tokens));
    }

    private static String unclosed(Kind kind) {
        return switch (kind) {
            case STRING -> "The text that begins here does not end in its line";
            case COMMENT -> "The comment that begins here has no end";
            default -> "The text that begins here has no end";
        };
    }

    private static Optional<Flaw> brackets(List<Token> tokens) {
        Deque<Token> opened = new ArrayDeque<>();
        for (Token token : tokens) {
            if (token.kind() == Kind.OPEN) {
                opened.push(token);
            } else if (token.kind() == Kind.CLOSE) {
                if (opened.isEmpty()) {
                    return Optional.of(new Flaw("The bracket " + token.text() + " closes nothing", token.start()));
                }
                Token open = opened.pop();
                if (!CLOSING.get(open.text()).equals(token.text())) {
                    String what = "The bracket " + open.text() + " is not closed before " + token.text();
                    return Optional.of(new Flaw(what, open.start()));
                }
            }
        }
        return Optional.ofNullable(opened.peek())
                .map(open -> new Flaw("The bracket " + open.text() + " is not closed", open.start()));
    }
}

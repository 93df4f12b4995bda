package headrace.kernel.session.assist;

import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Token.Kind;
import headrace.kernel.session.source.Tokens;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The text before a cursor, as far as it tells what can follow. */
final class Cursor {
    private final List<Token> tokens;
    private final int at;
    private final String prefix;

    /** Looks at a text from its beginning to a place. */
    Cursor(String code, int place) {
        at = Math.max(0, Math.min(place, code.length()));
        List<Token> all = new ArrayList<>(Tokens.of(code.substring(0, at)));
        Token last = all.isEmpty() ? null : all.get(all.size() - 1);
        boolean inName = last != null && last.kind() == Kind.WORD && last.end() == at;
        prefix = inName ? last.text() : "";
        if (inName) {
            all.remove(all.size() - 1);
        }
        tokens = List.copyOf(all);
    }

    /** Returns the part of a name that stands before the cursor. */
    String prefix() {
        return prefix;
    }

    /** Returns where that part begins. */
    int start() {
        return at - prefix.length();
    }

    /** Returns the tokens before that part. */
    List<Token> before() {
        return tokens;
    }

    /** Returns the last token before that part, if there is one in its line. */
    Optional<Token> last() {
        return tokens.isEmpty() ? Optional.empty() : Optional.of(tokens.get(tokens.size() - 1));
    }

    boolean follows(String text) {
        return last().filter(token -> token.is(text)).isPresent();
    }

    boolean inComment() {
        return last().filter(token -> token.kind() == Kind.COMMENT && (!token.closed() || token.end() == at))
                .isPresent();
    }

    /** Returns the string that the cursor stands in, if any. */
    Optional<Token> string() {
        return last().filter(token -> !token.closed() && token.kind() != Kind.COMMENT);
    }

    /** Returns the call in whose parentheses the cursor stands, not deeper in a list or block. */
    Optional<Call> call() {
        Deque<Integer> opened = new ArrayDeque<>();
        for (int i = 0; i < tokens.size(); i++) {
            if (tokens.get(i).kind() == Kind.OPEN) {
                opened.push(i);
            } else if (tokens.get(i).kind() == Kind.CLOSE && !opened.isEmpty()) {
                opened.pop();
            }
        }
        if (opened.isEmpty() || opened.peek() == 0) {
            return Optional.empty();
        }
        int open = opened.peek();
        Token name = tokens.get(open - 1);
        boolean calls = tokens.get(open).is("(") && name.kind() == Kind.WORD;
        return calls ? Optional.of(new Call(name.text(), arguments(tokens, open))) : Optional.empty();
    }

    /** Returns the calls of a name among tokens. */
    static List<Call> calls(List<Token> tokens, String name) {
        return IntStream.range(1, tokens.size())
                .filter(i -> tokens.get(i).is("(") && tokens.get(i - 1).is(name))
                .mapToObj(i -> new Call(name, arguments(tokens, i)))
                .toList();
    }

    /** Returns the arguments behind a bracket, up to the one that closes it or the end. */
    private static List<List<Token>> arguments(List<Token> tokens, int open) {
        List<List<Token>> arguments = new ArrayList<>(List.of(new ArrayList<>()));
        int depth = 0;
        for (Token token : tokens.subList(open + 1, tokens.size())) {
            depth += token.kind() == Kind.OPEN ? 1 : token.kind() == Kind.CLOSE ? -1 : 0;
            if (depth < 0) {
                break;
            }
            if (depth == 0 && token.is(",")) {
                arguments.add(new ArrayList<>());
            } else if (token.kind() != Kind.NEWLINE && token.kind() != Kind.COMMENT) {
                arguments.get(arguments.size() - 1).add(token);
            }
        }
        return arguments;
    }

    /**
     * A call, which may still be being written.
     *
     * @param name its name
     * @param arguments the tokens of each argument so far
     */
    record Call(String name, List<List<Token>> arguments) {
        /** Returns whether the argument being written has nothing yet. */
        boolean atArgument() {
            return arguments.get(arguments.size() - 1).isEmpty();
        }

        /** Returns the choices by name that were given already. */
        List<String> choices() {
            return arguments.stream()
                    .filter(Call::isChoice)
                    .map(argument -> argument.get(0).text())
                    .toList();
        }

        /** Returns how many arguments without a name stand before the one being written. */
        int position() {
            return (int) arguments.subList(0, arguments.size() - 1).stream()
                    .filter(argument -> !isChoice(argument))
                    .count();
        }

        /** Returns the name of the choice whose value is being written, if it is one. */
        Optional<String> choice() {
            List<Token> now = arguments.get(arguments.size() - 1);
            return isChoice(now) ? Optional.of(now.get(0).text()) : Optional.empty();
        }

        /** Returns the value of a choice, if it was made. */
        Optional<List<Token>> valueOf(String choice) {
            return arguments.stream()
                    .filter(argument ->
                            isChoice(argument) && argument.get(0).text().equals(choice))
                    .findFirst();
        }

        /** Returns the arguments without a name. */
        List<List<Token>> unnamed() {
            return arguments.stream().filter(argument -> !isChoice(argument)).toList();
        }

        private static boolean isChoice(List<Token> argument) {
            return argument.size() > 1
                    && argument.get(0).kind() == Kind.WORD
                    && argument.get(1).is(":");
        }
    }
}

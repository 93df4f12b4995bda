package headrace.kernel.headless.classroom;

import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Token.Kind;
import headrace.kernel.session.source.Tokens;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds the exercises in the text of a cell, in Groovy or in Java, and puts seals where their answers stand. */
final class ExerciseText {
    private static final String EXERCISE = "exercise";
    private static final String CHECK = "check";
    private static final Set<String> SEALED = Set.of("answer", "within", "hints");

    private final String text;
    private final boolean java;
    private final List<Token> tokens;

    ExerciseText(String text, boolean java) {
        this.text = text;
        this.java = java;
        tokens = Tokens.of(text).stream()
                .filter(token -> token.kind() != Kind.NEWLINE && token.kind() != Kind.COMMENT)
                .toList();
    }

    /** A call of a word: where it begins and ends in the text, and its arguments as they are written. */
    private record Call(int variable, int start, int end, List<List<Token>> arguments) {}

    /** Returns the names of the exercises that are posed in the text. */
    List<String> names() {
        return calls(EXERCISE).stream()
                .map(this::name)
                .filter(name -> !name.isEmpty())
                .toList();
    }

    /** Returns the variables that hold the exercises of the text. */
    List<String> variables() {
        return calls(EXERCISE).stream()
                .filter(call -> call.variable() >= 0)
                .map(call -> tokens.get(call.variable()).text())
                .toList();
    }

    /**
     * Returns the text with seals, and with checks that wait for an answer.
     *
     * @param seals the seal of each exercise by name; those without one stay as they are
     * @param variables the variables that hold exercises
     */
    String sealed(Map<String, String> seals, Set<String> variables) {
        StringBuilder out = new StringBuilder();
        int copied = 0;
        for (Call call : calls(Set.of(EXERCISE, CHECK))) {
            String inside = text.startsWith(EXERCISE, call.start())
                    ? posed(call, seals.get(name(call)))
                    : asked(call, variables);
            if (call.start() >= copied && inside != null) {
                out.append(text, copied, call.start()).append(inside);
                copied = call.end();
            }
        }
        return out.append(text.substring(copied)).toString();
    }

    private String posed(Call call, String seal) {
        boolean clear =
                call.arguments().stream().anyMatch(argument -> argument.get(0).is("answer"));
        if (seal == null || !clear) {
            return null;
        }
        String kept = call.arguments().stream()
                .filter(argument -> !SEALED.contains(argument.get(0).text()))
                .map(this::written)
                .collect(Collectors.joining(", "));
        return EXERCISE + "(" + kept + (java ? ",\n    seal(\"" + seal + "\"))" : ",\n    seal: '" + seal + "')");
    }

    private String asked(Call call, Set<String> variables) {
        if (call.arguments().size() < 2) {
            return null;
        }
        List<Token> first = call.arguments().get(0);
        boolean exercise = first.size() == 1 && variables.contains(first.get(0).text());
        return exercise ? CHECK + "(" + first.get(0).text() + ")" : null;
    }

    /** Returns the name of a posed exercise, or an empty text if it is not written as plain text. */
    private String name(Call call) {
        for (List<Token> argument : call.arguments()) {
            if (argument.size() == 1 && argument.get(0).kind() == Kind.STRING) {
                String quoted = argument.get(0).text();
                return quoted.substring(1, quoted.length() - 1).replaceAll("\\\\(.)", "$1");
            }
        }
        return "";
    }

    private String written(List<Token> argument) {
        return text.substring(
                argument.get(0).start(), argument.get(argument.size() - 1).end());
    }

    private List<Call> calls(String word) {
        return calls(Set.of(word));
    }

    private List<Call> calls(Set<String> words) {
        List<Call> calls = new ArrayList<>();
        for (int i = 0; i + 1 < tokens.size(); i++) {
            boolean called = tokens.get(i).kind() == Kind.WORD
                    && words.contains(tokens.get(i).text())
                    && tokens.get(i + 1).is("(");
            if (called && (i == 0 || !tokens.get(i - 1).is("."))) {
                call(i, calls);
            }
        }
        return calls;
    }

    /** Reads the arguments of a call, each to the comma that stands outside all brackets. */
    private void call(int word, List<Call> calls) {
        List<List<Token>> arguments = new ArrayList<>();
        List<Token> argument = new ArrayList<>();
        int depth = 1;
        for (int i = word + 2; i < tokens.size(); i++) {
            Token token = tokens.get(i);
            depth += token.kind() == Kind.OPEN ? 1 : token.kind() == Kind.CLOSE ? -1 : 0;
            boolean ends = depth == 0;
            if (!ends && !(depth == 1 && token.is(","))) {
                argument.add(token);
                continue;
            }
            if (!argument.isEmpty()) {
                arguments.add(List.copyOf(argument));
                argument.clear();
            }
            if (ends) {
                int variable = word > 1 && tokens.get(word - 1).is("=") ? word - 2 : -1;
                calls.add(new Call(variable, tokens.get(word).start(), token.end(), arguments));
                return;
            }
        }
    }
}

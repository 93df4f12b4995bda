package headrace.kernel.session.assist;

import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Token.Kind;
import headrace.script.Vocabulary;
import headrace.units.Money;
import java.lang.reflect.Method;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds out what an expression is without evaluating it: from the values that variables have now, and from what methods
 * say they return.
 */
final class Typing {
    private final Scope scope;

    Typing(Scope scope) {
        this.scope = scope;
    }

    /**
     * What is known of an expression.
     *
     * @param type its class, or the class that it names
     * @param named whether it names the class itself, so that only what is static follows
     * @param value its value, if it is at hand, or null
     */
    record Known(Class<?> type, boolean named, Object value) {
        static Known of(Class<?> type) {
            return new Known(type, false, null);
        }

        static Known of(Object value) {
            return new Known(value.getClass(), false, value);
        }
    }

    /** A name in a chain such as {@code curve.headAt(x).metres}, with or without arguments. */
    private record Step(String name, boolean call) {}

    /** Returns what the expression is that ends with the last of these tokens, if that can be told. */
    Optional<Known> of(List<Token> tokens) {
        Deque<Step> steps = new ArrayDeque<>();
        int at = tokens.size() - 1;
        while (at >= 0) {
            Token token = tokens.get(at);
            boolean call = false;
            if (token.is("}") || token.is(")")) {
                int open = partner(tokens, at);
                at = open - 1;
                if (token.is("}") && at >= 0 && tokens.get(at).is(")")) {
                    at = partner(tokens, at) - 1;
                }
                if (at < 0 || tokens.get(at).kind() != Kind.WORD) {
                    return Optional.empty();
                }
                token = tokens.get(at);
                call = true;
            }
            if (token.kind() != Kind.WORD) {
                return literal(tokens, at).flatMap(known -> follow(known, steps));
            }
            steps.push(new Step(token.text(), call));
            if (at == 0 || !(tokens.get(at - 1).is(".") || tokens.get(at - 1).is("?."))) {
                return start(tokens, at, steps);
            }
            at -= 2;
        }
        return Optional.empty();
    }

    private static int partner(List<Token> tokens, int close) {
        int depth = 0;
        for (int i = close; i >= 0; i--) {
            depth += tokens.get(i).kind() == Kind.CLOSE ? 1 : tokens.get(i).kind() == Kind.OPEN ? -1 : 0;
            if (depth == 0) {
                return i;
            }
        }
        return -1;
    }

    private Optional<Known> literal(List<Token> tokens, int at) {
        Token token = tokens.get(at);
        if (token.kind() == Kind.STRING || token.kind() == Kind.LONG_STRING) {
            return Optional.of(Known.of(String.class));
        }
        if (token.kind() == Kind.NUMBER) {
            return Optional.of(Known.of(Number.class));
        }
        if (token.is("]")) {
            int open = partner(tokens, at);
            boolean list = open >= 0 && (open == 0 || !endsOperand(tokens.get(open - 1)));
            boolean map = list && tokens.subList(open, at).stream().anyMatch(each -> each.is(":"));
            return list ? Optional.of(Known.of(map ? LinkedHashMap.class : ArrayList.class)) : Optional.empty();
        }
        return Optional.empty();
    }

    private static boolean endsOperand(Token token) {
        return token.kind() == Kind.WORD || token.kind() == Kind.CLOSE;
    }

    /** Resolves the first name of a chain, which may be a class's full name over several steps. */
    private Optional<Known> start(List<Token> tokens, int at, Deque<Step> steps) {
        Step first = steps.pop();
        if (at > 0 && tokens.get(at - 1).is("new")) {
            return scope.type(first.name()).map(Known::of).flatMap(known -> follow(known, steps));
        }
        if (first.call()) {
            return Vocabulary.all()
                    .word(first.name())
                    .<Class<?>>map(word -> word.methods().get(0).getReturnType())
                    .or(() -> unit(first.name()))
                    .map(Known::of)
                    .flatMap(known -> follow(known, steps));
        }
        Object value = scope.variables().get(first.name());
        if (value != null) {
            return follow(Known.of(value), steps);
        }
        StringBuilder name = new StringBuilder(first.name());
        Optional<Class<?>> type = scope.type(name.toString());
        while (type.isEmpty() && !steps.isEmpty() && !steps.peek().call()) {
            name.append('.').append(steps.pop().name());
            type = scope.type(name.toString());
        }
        return type.flatMap(found -> follow(new Known(found, true, null), steps));
    }

    /** Returns what a unit makes of a number, as Java writes it: {@code m3ph(52)}. */
    private static Optional<Class<?>> unit(String name) {
        return Vocabulary.all().unitWords().stream()
                .filter(word -> word.unit().word().equals(name))
                .findFirst()
                .map(word -> word.kind().type());
    }

    private static Optional<Known> follow(Known from, Deque<Step> steps) {
        Optional<Known> now = Optional.of(from);
        for (Step step : steps) {
            now = now.flatMap(known -> step(known, step));
        }
        return now;
    }

    private static Optional<Known> step(Known from, Step step) {
        if (from.value() instanceof Map<?, ?> map && Safe.isOfJdk(map) && !step.call()) {
            return Safe.value(map, step.name()).map(Known::of);
        }
        if (Number.class.isAssignableFrom(from.type()) && !step.call()) {
            return Vocabulary.all().unitWords().stream()
                    .filter(word -> word.unit().word().equals(step.name()))
                    .findFirst()
                    .<Class<?>>map(word -> word.kind().type())
                    .or(() -> Money.CURRENCIES.contains(step.name()) ? Optional.of(Money.class) : Optional.empty())
                    .map(Known::of);
        }
        return Members.called(from.type(), step.name())
                .map(Method::getReturnType)
                .filter(type -> type != Object.class && type != void.class)
                .map(type -> Known.of(Members.boxed(type)));
    }
}

package headrace.kernel.session.groovy;

import groovy.lang.Closure;
import groovy.lang.MissingMethodException;
import groovy.lang.Script;
import headrace.kernel.session.cell.Variables;
import headrace.problem.Refusal;
import headrace.script.ScriptProblem;
import headrace.units.Quantity;
import java.util.Arrays;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Words the calls that a cell makes of its own methods, closures and variables with what they do not take. */
final class WrongCalls {
    private final Variables variables;

    WrongCalls(Variables variables) {
        this.variables = variables;
    }

    /** Returns the refusal that a failed call amounts to, if it is one of these. */
    Optional<Refusal> explain(Throwable failure) {
        if (!(failure instanceof MissingMethodException missing)) {
            return Optional.empty();
        }
        String name = missing.getMethod();
        if (Closure.class.isAssignableFrom(missing.getType())) {
            boolean called = name.equals("doCall") || name.equals("call");
            return called
                    ? Optional.of(refusal("A closure", missing, Variables.parametersOfClosure(missing.getType())))
                    : Optional.empty();
        }
        if (!Script.class.isAssignableFrom(missing.getType())) {
            return Optional.empty();
        }
        Object value = variables.values().get(name);
        if (value instanceof Closure<?> closure) {
            return Optional.of(
                    refusal("The closure " + name, missing, Variables.parametersOfClosure(closure.getClass())));
        }
        if (variables.methods().containsKey(name)) {
            return Optional.of(refusal(
                    "The method " + name, missing, variables.methodParameters().get(name)));
        }
        return value == null ? Optional.empty() : Optional.of(noCall(name, value));
    }

    private static Refusal refusal(String what, MissingMethodException missing, String parameters) {
        String given =
                Arrays.stream(missing.getArguments()).map(WrongCalls::type).collect(Collectors.joining(", "));
        return new Refusal(
                ScriptProblem.WRONG_ARGUMENTS,
                what + " was given (" + given + ")",
                "It takes " + parameters,
                "Give it these, or change what it takes");
    }

    private static Refusal noCall(String name, Object value) {
        return new Refusal(
                ScriptProblem.WRONG_ARGUMENTS,
                "The variable " + name + " was called like a method",
                "It holds a " + type(value) + ", which cannot be called",
                "Write " + name + " without parentheses, or an operator such as * before them");
    }

    private static String type(Object value) {
        if (value == null) {
            return "null";
        }
        if (value instanceof Quantity<?> quantity) {
            return quantity.kind().name();
        }
        if (value instanceof Number) {
            return "number";
        }
        if (value instanceof CharSequence) {
            return "text";
        }
        if (value instanceof Map<?, ?>) {
            return "map";
        }
        if (value instanceof Closure<?>) {
            return "closure";
        }
        return value instanceof Collection<?> ? "list" : value.getClass().getSimpleName();
    }
}

package headrace.script;

import groovy.lang.MetaMethod;
import groovy.lang.MissingMethodException;
import groovy.lang.MissingPropertyException;
import groovy.lang.Script;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.units.UnitProblem;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.codehaus.groovy.runtime.InvokerHelper;

/** Turns what Groovy says about a name that it does not know into an answer that names the nearest that exist. */
public final class Misspelling {
    private final List<String> variables;

    private Misspelling(Collection<String> variables) {
        this.variables = List.copyOf(variables);
    }

    /**
     * Returns the refusal that a script's failure amounts to, if it is one about a name or about what a word was given.
     *
     * @param thrown what the script threw
     * @param variables the names of the variables that the script knows by now
     */
    public static Optional<Refusal> explain(Throwable thrown, Collection<String> variables) {
        Misspelling misspelling = new Misspelling(variables);
        for (Throwable each = thrown; each != null; each = each.getCause()) {
            if (each instanceof Refusal) {
                return Optional.empty();
            }
            if (each instanceof MissingPropertyException missing) {
                return Optional.of(misspelling.property(missing));
            }
            if (each instanceof MissingMethodException missing) {
                return Optional.of(misspelling.method(missing));
            }
        }
        return Optional.empty();
    }

    private Refusal property(MissingPropertyException missing) {
        String name = missing.getProperty();
        Class<?> type = missing.getType();
        return isScript(type) ? word(name) : member(name, type);
    }

    private Refusal method(MissingMethodException missing) {
        String name = missing.getMethod();
        Class<?> type = missing.getType();
        Optional<Vocabulary.Entry> word = Vocabulary.all().word(name);
        if (isScript(type) || Vocabulary.all().classes().contains(type)) {
            return word.map(known -> arguments(known, missing.getArguments())).orElseGet(() -> word(name));
        }
        if (Number.class.isAssignableFrom(type) && NumberUnits.words().contains(name)) {
            return new Refusal(
                    UnitProblem.UNKNOWN_UNIT,
                    "A number was followed by " + name + "() with parentheses",
                    "A unit is a noun and takes none",
                    "Write it as 12." + name);
        }
        return member(name, type);
    }

    private Refusal word(String name) {
        List<String> names = new ArrayList<>(variables);
        Vocabulary.all().words().forEach(word -> names.add(word.name()));
        List<String> near = Nearest.to(name, names);
        return new Refusal(
                ScriptProblem.UNKNOWN_WORD,
                "The script says '" + name + "'",
                "No word and no variable has that name",
                Nearest.sentence(near, "help() lists the words"));
    }

    private static Refusal member(String name, Class<?> type) {
        Set<String> names = new TreeSet<>();
        Arrays.stream(type.getMethods())
                .filter(method -> method.getDeclaringClass() != Object.class)
                .forEach(method -> names.add(method.getName()));
        added(type).forEach(method -> names.add(method.getName()));
        List<String> near = Nearest.to(name, names);
        String owner = Described.type(type);
        boolean exists = names.contains(name);
        return new Refusal(
                exists ? ScriptProblem.WRONG_ARGUMENTS : ScriptProblem.UNKNOWN_WORD,
                "Asked " + owner + " for '" + name + "'" + (exists ? " with other arguments than it takes" : ""),
                exists ? "It takes " + parameters(name, type) : "It has nothing of that name",
                Nearest.sentence(near, "Look it up in the guide"));
    }

    private static Refusal arguments(Vocabulary.Entry word, Object[] given) {
        return new Refusal(
                ScriptProblem.WRONG_ARGUMENTS,
                "The word " + word.name() + " was given " + described(given),
                "It is used as " + Nearest.either(word.signatures()),
                "An example: " + word.example());
    }

    /** Returns what Groovy adds to the methods of a class, such as {@code collect} to those of a list. */
    private static List<MetaMethod> added(Class<?> type) {
        return InvokerHelper.getMetaClass(type).getMetaMethods().stream()
                .filter(method -> method.getDeclaringClass().getTheClass() != Object.class)
                .toList();
    }

    private static String parameters(String name, Class<?> type) {
        Stream<Class<?>[]> own = Arrays.stream(type.getMethods())
                .filter(method -> method.getName().equals(name))
                .map(Method::getParameterTypes);
        Stream<Class<?>[]> more = added(type).stream()
                .filter(method -> method.getName().equals(name))
                .map(MetaMethod::getNativeParameterTypes);
        return Nearest.either(Stream.concat(own, more)
                .map(Misspelling::described)
                .distinct()
                .sorted()
                .toList());
    }

    private static String described(Class<?>[] types) {
        return types.length == 0
                ? "nothing"
                : String.join(" and ", Arrays.stream(types).map(Described::type).toList());
    }

    private static String described(Object[] given) {
        List<String> values = new ArrayList<>();
        for (Object each : given) {
            values.add(each == null ? "nothing (null)" : Described.type(each.getClass()));
        }
        return values.isEmpty() ? "nothing" : String.join(", ", values);
    }

    private static boolean isScript(Class<?> type) {
        return type != null && Script.class.isAssignableFrom(type);
    }
}

package headrace.kernel.session.cell;

import groovy.lang.Binding;
import groovy.lang.Closure;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/** The variables and methods that a session's cells have left behind. May be used by any thread. */
public final class Variables extends Binding {
    private final Map<String, Closure<?>> methods = new ConcurrentHashMap<>();

    /** Creates an empty set. */
    public Variables() {
        super(Collections.synchronizedMap(new LinkedHashMap<>()));
    }

    /** Returns a variable's value, or else the method of that name as a closure. */
    @Override
    public Object getVariable(String name) {
        Closure<?> method = methods.get(name);
        return method == null || super.hasVariable(name) ? super.getVariable(name) : method;
    }

    /** Keeps a method for the cells to come, in place of an earlier one of that name. */
    public void keep(String name, Closure<?> method) {
        Closure<?> old = methods.put(name, method);
        if (old != null) {
            Redefinition.lead(old, name, this);
        }
    }

    /** Returns the method of that name, or null. */
    Closure<?> method(String name) {
        return methods.get(name);
    }

    /** Returns the variables as they are now, in the order in which they came. */
    public Map<String, Object> values() {
        @SuppressWarnings("unchecked")
        Map<String, Object> all = getVariables();
        synchronized (all) {
            return new LinkedHashMap<>(all);
        }
    }

    /** Returns the names that can be called: those of methods, and of variables that hold a closure. */
    public Set<String> callable() {
        Set<String> names = new TreeSet<>(methods.keySet());
        values().forEach((name, value) -> {
            if (value instanceof Closure<?>) {
                names.add(name);
            }
        });
        return names;
    }

    /** Returns the names of the variables and methods. */
    public Set<String> names() {
        Set<String> names = new TreeSet<>(values().keySet());
        names.addAll(methods.keySet());
        return names;
    }

    /** Returns the methods as they are now. */
    public Map<String, Closure<?>> methods() {
        return Map.copyOf(methods);
    }

    /** Returns the parameters of each method, such as {@code (flow, head)}. */
    public Map<String, String> methodParameters() {
        Map<String, String> all = new TreeMap<>();
        methods.forEach(
                (name, method) -> all.put(name, parameters(method.getOwner().getClass(), name)));
        return all;
    }

    /** Returns the parameters of a closure of this class, such as {@code (flow, head)}. */
    public static String parametersOfClosure(Class<?> closure) {
        return parameters(closure, "doCall");
    }

    private static String parameters(Class<?> owner, String name) {
        return Arrays.stream(owner.getDeclaredMethods())
                .filter(method -> method.getName().equals(name) && !method.isSynthetic())
                .max(Comparator.comparing(Method::getParameterCount))
                .map(method -> Arrays.stream(method.getParameters())
                        .map(Variables::parameter)
                        .collect(Collectors.joining(", ", "(", ")")))
                .orElse("()");
    }

    private static String parameter(Parameter parameter) {
        boolean typed = parameter.getType() != Object.class;
        return (typed ? parameter.getType().getSimpleName() + " " : "") + parameter.getName();
    }
}

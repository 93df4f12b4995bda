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
import org.codehaus.groovy.runtime.ScriptBytecodeAdapter;
import org.codehaus.groovy.runtime.typehandling.GroovyCastException;

/** The variables and methods that a session's cells have left behind. May be used by any thread. */
public final class Variables extends Binding {
    private final Map<String, Closure<?>> methods = new ConcurrentHashMap<>();
    private final Map<String, Place> places = new ConcurrentHashMap<>();
    private final Map<String, Class<?>> types = new ConcurrentHashMap<>();

    /** Where a variable lives that cells of another language know too. */
    public interface Place {
        /** Returns what it holds. */
        Object value();

        /**
         * Changes what it holds.
         *
         * @return whether the place can hold the value
         */
        boolean take(Object value);
    }

    /** A method that was not defined by a script, and knows its own parameters. */
    public interface WithParameters {
        /** Returns them, such as {@code (flow, head)}. */
        String parameters();
    }

    /** Creates an empty set. */
    public Variables() {
        super(Collections.synchronizedMap(new LinkedHashMap<>()));
    }

    /** Returns a variable's value, or else the method of that name as a closure. */
    @Override
    public Object getVariable(String name) {
        Place place = places.get(name);
        if (place != null) {
            return place.value();
        }
        Closure<?> method = methods.get(name);
        return method == null || super.hasVariable(name) ? super.getVariable(name) : method;
    }

    /** Changes a variable. One that was declared with a type takes only what can be made one of that type. */
    @Override
    public void setVariable(String name, Object given) {
        Class<?> type = types.get(name);
        Object value = type == null ? given : cast(given, type);
        Place place = places.get(name);
        if (place == null || !place.take(value)) {
            places.remove(name);
            super.setVariable(name, value);
        }
    }

    @Override
    public void removeVariable(String name) {
        places.remove(name);
        types.remove(name);
        super.removeVariable(name);
    }

    private static Object cast(Object given, Class<?> type) {
        if (given == null && type.isPrimitive()) {
            throw new GroovyCastException("Nothing (null) was given to a variable of type " + type);
        }
        try {
            return ScriptBytecodeAdapter.castToType(given, type);
        } catch (RuntimeException | Error failure) {
            throw failure;
        } catch (Throwable failure) {
            throw new GroovyCastException(given, type);
        }
    }

    /**
     * Says with which type a variable is declared from now on. Called by the cell that declares it.
     *
     * @param type its type, or null for one that takes everything
     */
    public void declare(String name, Class<?> type) {
        if (type == null || type == Object.class) {
            types.remove(name);
        } else {
            types.put(name, type);
        }
    }

    /** Returns the type with which a variable was declared, or null. */
    public Class<?> declared(String name) {
        return types.get(name);
    }

    /** Lets a variable live in a place that another language knows. */
    public void lead(String name, Place place) {
        types.remove(name);
        places.put(name, place);
        super.setVariable(name, null); // it has its turn among the others
    }

    /** Returns whether the variable lives in that place. */
    public boolean isLedTo(String name, Place place) {
        return places.get(name) == place;
    }

    /** Keeps a method for the cells to come, in place of an earlier one of that name. */
    public void keep(String name, Closure<?> method) {
        Closure<?> old = methods.put(name, method);
        if (old != null && !(old instanceof WithParameters)) {
            Redefinition.lead(old, name, this);
        }
    }

    /** Forgets a method. */
    public void drop(String name) {
        methods.remove(name);
    }

    /** Returns the method of that name, or null. */
    public Closure<?> method(String name) {
        return methods.get(name);
    }

    /** Returns the variables as they are now, in the order in which they came. */
    public Map<String, Object> values() {
        @SuppressWarnings("unchecked")
        Map<String, Object> all = getVariables();
        Map<String, Object> now;
        synchronized (all) {
            now = new LinkedHashMap<>(all);
        }
        places.forEach((name, place) -> now.put(name, place.value()));
        return now;
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
        methods.forEach((name, method) -> all.put(
                name,
                method instanceof WithParameters known
                        ? known.parameters()
                        : parameters(method.getOwner().getClass(), name)));
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

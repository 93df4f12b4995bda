package headrace.kernel.session.assist;

import groovy.lang.MetaMethod;
import headrace.kernel.session.Completion.Candidate;
import java.lang.invoke.MethodType;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.codehaus.groovy.runtime.InvokerHelper;

/** The members of a class that a script could name, found by reflection alone. */
final class Members {
    private static final Set<String> NEVER = Set.of(
            "getMetaClass",
            "setMetaClass",
            "invokeMethod",
            "getProperty",
            "setProperty",
            "getClass",
            "hashCode",
            "equals",
            "toString",
            "compareTo",
            "wait",
            "notify",
            "notifyAll",
            "metaClass");

    private Members() {}

    /** Returns the members of a class's objects, or those of the class itself. */
    static List<Candidate> of(Class<?> type, boolean ofTheClass) {
        Map<String, Candidate> found = new TreeMap<>();
        for (Method method : methods(type)) {
            if (Modifier.isStatic(method.getModifiers()) == ofTheClass) {
                Candidate candidate = candidate(method);
                found.putIfAbsent(candidate.text(), candidate);
            }
        }
        for (Field field : type.getFields()) {
            if (Modifier.isStatic(field.getModifiers()) == ofTheClass
                    && !field.getName().contains("$")) {
                found.put(
                        field.getName(),
                        new Candidate(
                                field.getName(), "property", field.getType().getSimpleName()));
            }
        }
        List<Candidate> all = new ArrayList<>(found.values());
        if (!ofTheClass && type.getName().startsWith("java.")) {
            additions(type, found.keySet()).forEach(all::add);
        }
        return all;
    }

    /** Returns the members as Java writes them: each method once with its parentheses, and none that Groovy adds. */
    static List<Candidate> inJava(Class<?> type, boolean ofTheClass) {
        Map<String, Candidate> found = new TreeMap<>();
        for (Method method : methods(type)) {
            if (Modifier.isStatic(method.getModifiers()) == ofTheClass) {
                // the methods come with the fewest parameters first: one that also takes some leaves the parentheses
                // open
                String called = method.getName() + (method.getParameterCount() == 0 ? "()" : "(");
                found.put(method.getName() + "()", new Candidate(called, "method", signature(method)));
            }
        }
        for (Field field : type.getFields()) {
            if (Modifier.isStatic(field.getModifiers()) == ofTheClass) {
                found.put(
                        field.getName(),
                        new Candidate(
                                field.getName(), "property", field.getType().getSimpleName()));
            }
        }
        return List.copyOf(found.values());
    }

    /** Returns the method that a step of a chain calls, or whose value it reads as a property. */
    static Optional<Method> called(Class<?> type, String name) {
        String property = name.isEmpty() ? name : name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
        return methods(type).stream()
                .filter(method -> method.getName().equals(name)
                        || method.getParameterCount() == 0
                                && (method.getName().equals("get" + property)
                                        || method.getName().equals("is" + property)))
                .min(Comparator.comparing(method -> method.getName().equals(name) ? 0 : 1));
    }

    /** Returns how each method of a name is called. */
    static List<String> signatures(Class<?> type, String name) {
        return methods(type).stream()
                .filter(method -> method.getName().equals(name))
                .map(Members::signature)
                .distinct()
                .toList();
    }

    /** Returns the class that holds a primitive value, or the class itself. */
    static Class<?> boxed(Class<?> type) {
        return MethodType.methodType(type).wrap().returnType();
    }

    private static List<Method> methods(Class<?> type) {
        return Arrays.stream(type.getMethods())
                .filter(method -> !method.isSynthetic()
                        && method.getDeclaringClass() != Object.class
                        && !method.getName().contains("$")
                        && !NEVER.contains(method.getName()))
                .sorted(Comparator.comparing(Method::getParameterCount).thenComparing(Method::toString))
                .toList();
    }

    private static Candidate candidate(Method method) {
        String property = propertyOf(method);
        return property.isEmpty()
                ? new Candidate(method.getName(), "method", signature(method))
                : new Candidate(property, "property", method.getReturnType().getSimpleName());
    }

    /** What is told without arguments reads as a noun: by its bare name in our classes, else as a bean's property. */
    private static String propertyOf(Method method) {
        String name = method.getName();
        if (method.getParameterCount() > 0
                || method.getReturnType() == void.class
                || Modifier.isStatic(method.getModifiers())) {
            return "";
        }
        if (isOurs(method.getDeclaringClass())) {
            return name;
        }
        int skip = name.matches("get[A-Z].*") ? 3 : name.matches("is[A-Z].*") ? 2 : 0;
        return skip == 0 ? "" : name.substring(skip, skip + 1).toLowerCase(Locale.ROOT) + name.substring(skip + 1);
    }

    private static String signature(Method method) {
        return method.getName()
                + Arrays.stream(method.getParameters())
                        .map(Members::parameter)
                        .collect(Collectors.joining(", ", "(", ")"))
                + ": " + method.getReturnType().getSimpleName();
    }

    private static String parameter(Parameter parameter) {
        String type = parameter.getType().getSimpleName();
        return parameter.isNamePresent() ? type + " " + parameter.getName() : type;
    }

    /** What Groovy adds to the classes of the JDK, such as {@code collect} for lists. */
    private static List<Candidate> additions(Class<?> type, Set<String> known) {
        return InvokerHelper.getMetaClass(type).getMetaMethods().stream()
                .filter(method -> !method.getDeclaringClass().getName().equals("java.lang.Object")
                        && !method.isStatic()
                        && !known.contains(method.getName())
                        && !method.getName().contains("$"))
                .collect(Collectors.toMap(MetaMethod::getName, method -> method, (one, other) -> one, TreeMap::new))
                .values()
                .stream()
                .map(method -> new Candidate(method.getName(), "method", signature(method)))
                .toList();
    }

    private static String signature(MetaMethod method) {
        Class<?>[] parameters = method.getNativeParameterTypes();
        return method.getName()
                + Arrays.stream(parameters)
                        .map(type -> type.getSimpleName())
                        .collect(Collectors.joining(", ", "(", ")"));
    }

    private static boolean isOurs(Class<?> type) {
        return type.getName().startsWith("headrace.");
    }
}

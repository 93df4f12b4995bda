package headrace.kernel.session.java;

import headrace.kernel.session.cell.OwnLibraries;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes the type of a live object as Java can name it: its own class, or the nearest above it that is public. */
final class TypeText {
    private static final int MOST_LOOKED_AT = 10_000;

    private TypeText() {}

    /** Returns the type of a variable that holds this value. */
    static String of(Object value) {
        return value == null ? "Object" : generic(nameable(value.getClass()), value);
    }

    /** Returns the type of a variable or method that was declared with this one. */
    static String of(Class<?> declared) {
        return generic(nameable(declared), null);
    }

    private static String generic(Class<?> type, Object value) {
        int parameters = type.getTypeParameters().length;
        if (parameters == 0) {
            return type.getCanonicalName();
        }
        List<String> arguments = new ArrayList<>();
        if (parameters == 1 && value instanceof Collection<?> all && isOfJdk(type)) {
            arguments.add(common(all));
        } else if (parameters == 2 && value instanceof Map<?, ?> map && isOfJdk(type)) {
            arguments.add(common(map.keySet()));
            arguments.add(common(map.values()));
        } else {
            Arrays.stream(type.getTypeParameters()).forEach(each -> arguments.add("?"));
        }
        return type.getCanonicalName() + arguments.stream().collect(Collectors.joining(", ", "<", ">"));
    }

    private static boolean isOfJdk(Class<?> type) {
        return type.getName().startsWith("java.util.");
    }

    /** Returns the type that all elements share, or Object. */
    private static String common(Collection<?> elements) {
        Set<Class<?>> types = new LinkedHashSet<>();
        if (elements.size() <= MOST_LOOKED_AT) {
            for (Object each : elements) {
                types.add(each == null ? Object.class : nameable(each.getClass()));
            }
        }
        boolean one = types.size() == 1 && types.iterator().next().getTypeParameters().length == 0;
        boolean numbers = types.size() > 1 && types.stream().allMatch(Number.class::isAssignableFrom);
        return one ? types.iterator().next().getCanonicalName() : numbers ? "Number" : "Object";
    }

    /** Returns the class, or the nearest class or interface above it that any code can name. */
    static Class<?> nameable(Class<?> type) {
        if (isNameable(type)) {
            return type;
        }
        Class<?> above = type.getSuperclass();
        while (above != null && !isNameable(above)) {
            above = above.getSuperclass();
        }
        Class<?> base = above == null ? Object.class : above;
        if (base != Object.class && !base.getSimpleName().startsWith("Abstract")) {
            return base;
        }
        return interfaces(type).stream()
                .filter(each -> isNameable(each) && !each.isAssignableFrom(base))
                .findFirst()
                .<Class<?>>map(each -> each)
                .orElse(base);
    }

    private static Set<Class<?>> interfaces(Class<?> type) {
        Set<Class<?>> all = new LinkedHashSet<>();
        for (Class<?> each = type; each != null; each = each.getSuperclass()) {
            for (Class<?> one : each.getInterfaces()) {
                all.add(one);
                all.addAll(interfaces(one));
            }
        }
        return all;
    }

    private static boolean isNameable(Class<?> type) {
        if (type.isPrimitive()) {
            return true;
        }
        if (type.isArray()) {
            return isNameable(type.getComponentType());
        }
        if (type.getCanonicalName() == null || type.isHidden() || type.isSynthetic()) {
            return false;
        }
        boolean ofACell = type.getName().startsWith(LiveClasses.PACKAGE);
        for (Class<?> each = type; each != null; each = each.getEnclosingClass()) {
            boolean wrapper = ofACell && each.getEnclosingClass() == null;
            if (!wrapper && !Modifier.isPublic(each.getModifiers())) {
                return false;
            }
        }
        return type.getModule().isExported(type.getPackageName())
                && !(type.getPackageName().isEmpty())
                && !OwnLibraries.hide(type.getName());
    }
}

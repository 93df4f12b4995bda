package headrace.script.java;

import groovyjarjarasm.asm.Type;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.WildcardType;

/** Writes generic types as class files do, so that a compiler knows what a list is a list of. */
final class GenericText {
    private GenericText() {}

    /** Returns what a method returns. */
    static String returned(Method method) {
        return of(method.getGenericReturnType(), method.getReturnType());
    }

    private static String of(java.lang.reflect.Type type, Class<?> plain) {
        if (type instanceof Class<?> known) {
            return Type.getDescriptor(known);
        }
        if (type instanceof ParameterizedType generic
                && generic.getRawType() instanceof Class<?> raw
                && generic.getOwnerType() == null) {
            StringBuilder text =
                    new StringBuilder("L").append(Type.getInternalName(raw)).append('<');
            for (java.lang.reflect.Type argument : generic.getActualTypeArguments()) {
                text.append(argument(argument));
            }
            return text.append(">;").toString();
        }
        return Type.getDescriptor(plain);
    }

    private static String argument(java.lang.reflect.Type argument) {
        if (argument instanceof WildcardType wildcard) {
            java.lang.reflect.Type bound = wildcard.getUpperBounds()[0];
            return wildcard.getLowerBounds().length > 0 || bound == Object.class ? "*" : "+" + of(bound, Object.class);
        }
        return of(argument, Object.class);
    }
}

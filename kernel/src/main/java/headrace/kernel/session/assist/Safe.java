package headrace.kernel.session.assist;

import java.util.Collection;
import java.util.Map;

/** Which values can be asked for their parts and their text without running code of the user. */
final class Safe {
    private static final int DEEPEST = 4;

    private Safe() {}

    /**
     * Returns whether the value's class belongs to the JDK, whose collections tell their parts without side effects.
     */
    static boolean isOfJdk(Object value) {
        return value.getClass().getName().startsWith("java.");
    }

    /** Returns whether neither the value nor anything in it is of a class that a cell defines. */
    static boolean isTold(Object value) {
        return isTold(value, 0);
    }

    private static boolean isTold(Object value, int depth) {
        if (value == null || isOurs(value)) {
            return true;
        }
        if (depth > DEEPEST || value.getClass().isArray()) {
            return value.getClass().isArray()
                    && value.getClass().getComponentType().isPrimitive();
        }
        if (value instanceof Map<?, ?> map) {
            return isOfJdk(map)
                    && map.entrySet().stream()
                            .allMatch(each -> isTold(each.getKey(), depth + 1) && isTold(each.getValue(), depth + 1));
        }
        if (value instanceof Collection<?> collection) {
            return isOfJdk(collection) && collection.stream().allMatch(each -> isTold(each, depth + 1));
        }
        return isOfJdk(value);
    }

    private static boolean isOurs(Object value) {
        return value.getClass().getName().startsWith("headrace.")
                && value.getClass().getClassLoader() == Safe.class.getClassLoader();
    }
}

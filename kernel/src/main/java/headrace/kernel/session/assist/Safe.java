package headrace.kernel.session.assist;

import java.util.Collection;
import java.util.ConcurrentModificationException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

    /** Returns the keys of a map that are names; none while the running cell is changing it. */
    static List<String> keys(Map<?, ?> map) {
        try {
            return map.keySet().stream()
                    .filter(String.class::isInstance)
                    .map(String.class::cast)
                    .toList();
        } catch (ConcurrentModificationException e) {
            return List.of();
        }
    }

    /** Returns the value of a key, found without asking the map to compare, which could be the user's own way. */
    static Optional<Object> value(Map<?, ?> map, String key) {
        try {
            return map.entrySet().stream()
                    .filter(entry -> key.equals(entry.getKey()) && entry.getValue() != null)
                    .<Object>map(Map.Entry::getValue)
                    .findFirst();
        } catch (ConcurrentModificationException e) {
            return Optional.empty();
        }
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

package headrace.kernel.wire;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/** What becomes of a value, by its kind. */
final class Kinds<T, R> {
    private final Map<Class<?>, Function<T, R>> byKind = new HashMap<>();

    /** Lets this become of a kind, and returns this. */
    <K extends T> Kinds<T, R> with(Class<K> kind, Function<K, R> become) {
        byKind.put(kind, value -> become.apply(kind.cast(value)));
        return this;
    }

    /** Returns what becomes of a value. */
    R of(T value) {
        Function<T, R> become = byKind.get(value.getClass());
        if (become == null) {
            throw new IllegalArgumentException("No message of the protocol says " + value);
        }
        return become.apply(value);
    }
}

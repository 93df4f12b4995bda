package headrace.kernel.widget;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A state as it travels: other widgets by their identity, bytes taken out and sent beside it.
 *
 * @param state what is left
 * @param paths where in the state each of the buffers belongs
 * @param buffers the bytes
 */
record Written(Map<String, Object> state, List<List<Object>> paths, List<byte[]> buffers) {
    /** Writes a state. */
    static Written of(Map<String, ?> state) {
        Map<String, Object> left = new LinkedHashMap<>();
        List<List<Object>> paths = new ArrayList<>();
        List<byte[]> buffers = new ArrayList<>();
        state.forEach((name, value) -> {
            if (value instanceof byte[] bytes) {
                paths.add(List.of(name));
                buffers.add(bytes);
            } else {
                left.put(name, written(value));
            }
        });
        return new Written(left, paths, buffers);
    }

    /** Returns what is said of it to a front end. */
    Map<String, Object> message(String method) {
        return Map.of("method", method, "state", state, "buffer_paths", paths);
    }

    private static Object written(Object value) {
        if (value instanceof Widget widget) {
            return "IPY_MODEL_" + widget.id();
        }
        return value instanceof List<?> several
                ? several.stream().map(Written::written).toList()
                : value;
    }
}

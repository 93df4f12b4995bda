package headrace.kernel.wire;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;

/** Reads the content of a message field by field. What is left out has its value in the protocol. */
final class Fields {
    private final Map<String, Object> content;

    Fields(Map<String, Object> content) {
        this.content = content;
    }

    /** Returns a text that must be there. */
    String text(String name) {
        if (content.get(name) instanceof String text) {
            return text;
        }
        throw wrong(name, "a text");
    }

    String text(String name, String otherwise) {
        return content.get(name) == null ? otherwise : text(name);
    }

    boolean flag(String name, boolean otherwise) {
        Object value = content.get(name);
        if (value == null) {
            return otherwise;
        }
        if (value instanceof Boolean flag) {
            return flag;
        }
        throw wrong(name, "true or false");
    }

    int whole(String name, int otherwise) {
        return whole(name).orElse(otherwise);
    }

    /** Returns a whole number, if there is one; one that no integer can hold becomes the nearest that can. */
    OptionalInt whole(String name) {
        Object value = content.get(name);
        if (value == null) {
            return OptionalInt.empty();
        }
        if (value instanceof Number number && number.doubleValue() == Math.rint(number.doubleValue())) {
            return OptionalInt.of((int) number.doubleValue());
        }
        throw wrong(name, "a whole number");
    }

    /** Returns a tree, empty if there is none. */
    Map<String, Object> tree(String name) {
        Object value = content.get(name);
        if (value == null) {
            return Map.of();
        }
        if (value instanceof Map<?, ?> map) {
            Map<String, Object> tree = new LinkedHashMap<>();
            map.forEach((key, element) -> tree.put((String) key, element));
            return tree;
        }
        throw wrong(name, "an object");
    }

    /** Returns texts by name, empty if there are none. */
    Map<String, String> texts(String name) {
        Map<String, String> texts = new LinkedHashMap<>();
        tree(name).forEach((key, value) -> {
            if (!(value instanceof String text)) {
                throw wrong(name, "an object of texts");
            }
            texts.put(key, text);
        });
        return texts;
    }

    private static IllegalArgumentException wrong(String name, String wanted) {
        return new IllegalArgumentException("The field " + name + " of the content is to be " + wanted);
    }
}

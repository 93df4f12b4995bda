package headrace.kernel.display;

import java.lang.reflect.Array;
import java.util.Collection;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;

/** A value as plain text of bounded length. */
final class PlainValue {
    /** Longer text is a file, not a thing to look at. */
    private static final int MOST_CHARACTERS = 20_000;

    private static final int MOST_DEPTH = 20;

    private final StringBuilder out = new StringBuilder();

    private PlainValue() {}

    /** Returns the text of a value; of one whose {@code toString} fails, what it is and how it failed. */
    static String text(Object value) {
        try {
            PlainValue plain = new PlainValue();
            plain.write(value, 0);
            return shortened(plain.out.toString());
        } catch (Exception | StackOverflowError | AssertionError failure) {
            return "(a " + value.getClass().getSimpleName() + " whose text failed with "
                    + failure.getClass().getSimpleName() + messageOf(failure) + ")";
        }
    }

    private static String messageOf(Throwable failure) {
        try {
            return failure.getMessage() == null ? "" : ": " + failure.getMessage();
        } catch (RuntimeException e) {
            return "";
        }
    }

    private static String shortened(String text) {
        if (text.length() <= MOST_CHARACTERS) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(MOST_CHARACTERS - 1)) ? MOST_CHARACTERS - 1 : MOST_CHARACTERS;
        return text.substring(0, end) + "… (cut here; save it to a file to read it all)";
    }

    private void write(Object value, int depth) {
        if (depth > MOST_DEPTH) {
            out.append('…');
        } else if (value instanceof Map<?, ?> map) {
            map(map.entrySet().iterator(), depth);
        } else if (value instanceof Collection<?> collection) {
            list(collection.iterator(), depth);
        } else if (value != null && value.getClass().isArray()) {
            array(value, depth);
        } else if (value instanceof Optional<?> optional) {
            write(optional.isPresent() ? optional.get() : "none", depth + 1);
        } else {
            out.append(value);
        }
    }

    private void map(Iterator<? extends Map.Entry<?, ?>> entries, int depth) {
        out.append(entries.hasNext() ? "[" : "[:");
        while (entries.hasNext() && room()) {
            Map.Entry<?, ?> entry = entries.next();
            write(entry.getKey(), depth + 1);
            out.append(':');
            write(entry.getValue(), depth + 1);
            out.append(entries.hasNext() ? ", " : "");
        }
        out.append(']');
    }

    private void list(Iterator<?> elements, int depth) {
        out.append('[');
        while (elements.hasNext() && room()) {
            write(elements.next(), depth + 1);
            out.append(elements.hasNext() ? ", " : "");
        }
        out.append(']');
    }

    private void array(Object array, int depth) {
        out.append('[');
        for (int i = 0; i < Array.getLength(array) && room(); i++) {
            out.append(i == 0 ? "" : ", ");
            write(Array.get(array, i), depth + 1);
        }
        out.append(']');
    }

    private boolean room() {
        return out.length() <= MOST_CHARACTERS;
    }
}

package headrace.kernel.wire;

import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * JSON as trees of maps, lists, strings, numbers, booleans and nulls.
 *
 * <p>Whole numbers stay whole. What JSON cannot say, infinity and not-a-number, is written as null, because a browser
 * throws away the whole message otherwise.
 */
final class Json {
    private Json() {}

    /** Returns the object that the bytes hold, and refuses anything that is not strictly one object in UTF-8. */
    static Map<String, Object> object(byte[] utf8) throws IOException {
        if (parse(decoded(utf8)) instanceof Map<?, ?> map) {
            return checked(map);
        }
        throw new IOException("not an object");
    }

    /** Returns the tree that the text holds. */
    static Object parse(String text) throws IOException {
        try (JsonReader in = new JsonReader(new StringReader(text))) {
            in.setStrictness(Strictness.STRICT);
            Object tree = value(in);
            if (in.peek() != JsonToken.END_DOCUMENT) {
                throw new IOException("more than one value");
            }
            return tree;
        } catch (IllegalStateException | NumberFormatException bad) {
            throw new IOException(bad);
        }
    }

    /** Returns the bytes of a tree. */
    static byte[] bytes(Object tree) {
        return text(tree).getBytes(StandardCharsets.UTF_8);
    }

    /** Returns the text of a tree. */
    static String text(Object tree) {
        StringWriter text = new StringWriter();
        try (JsonWriter out = new JsonWriter(text)) {
            write(tree, out);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    @SuppressWarnings("unchecked") // every map that value() makes has strings for keys
    private static Map<String, Object> checked(Map<?, ?> map) {
        return (Map<String, Object>) map;
    }

    private static String decoded(byte[] utf8) throws CharacterCodingException {
        return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(utf8)).toString();
    }

    private static Object value(JsonReader in) throws IOException {
        return switch (in.peek()) {
            case BEGIN_OBJECT -> members(in);
            case BEGIN_ARRAY -> elements(in);
            case STRING -> in.nextString();
            case NUMBER -> number(in.nextString());
            case BOOLEAN -> in.nextBoolean();
            case NULL -> {
                in.nextNull();
                yield null;
            }
            default -> throw new IOException("no value where one is due");
        };
    }

    private static Map<String, Object> members(JsonReader in) throws IOException {
        Map<String, Object> members = new LinkedHashMap<>();
        in.beginObject();
        while (in.hasNext()) {
            members.put(in.nextName(), value(in));
        }
        in.endObject();
        return members;
    }

    private static List<Object> elements(JsonReader in) throws IOException {
        List<Object> elements = new ArrayList<>();
        in.beginArray();
        while (in.hasNext()) {
            elements.add(value(in));
        }
        in.endArray();
        return elements;
    }

    private static Number number(String literal) {
        if (literal.chars().noneMatch(c -> c == '.' || c == 'e' || c == 'E')) {
            BigInteger whole = new BigInteger(literal);
            return whole.bitLength() < Long.SIZE ? (Number) whole.longValue() : whole;
        }
        double value = Double.parseDouble(literal);
        return Double.isFinite(value) ? (Number) value : new BigDecimal(literal);
    }

    private static void write(Object tree, JsonWriter out) throws IOException {
        if (tree == null) {
            out.nullValue();
        } else if (tree instanceof Map<?, ?> map) {
            out.beginObject();
            for (Map.Entry<?, ?> member : map.entrySet()) {
                out.name(String.valueOf(member.getKey()));
                write(member.getValue(), out);
            }
            out.endObject();
        } else if (tree instanceof Iterable<?> elements) {
            out.beginArray();
            for (Object element : elements) {
                write(element, out);
            }
            out.endArray();
        } else if (tree instanceof Boolean flag) {
            out.value(flag);
        } else if (tree instanceof Number number) {
            write(number, out);
        } else {
            out.value(tree.toString());
        }
    }

    private static void write(Number number, JsonWriter out) throws IOException {
        if (Double.isFinite(number.doubleValue()) || number instanceof BigDecimal || number instanceof BigInteger) {
            out.value(number);
        } else {
            out.nullValue();
        }
    }
}

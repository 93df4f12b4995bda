package headrace.kernel.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A JSON object of a notebook file, kept as it was read: what this program does not know survives, in its order. Never
 * changes; the methods that put something in return a copy.
 */
public final class Fields {
    /** The empty object. */
    public static final Fields NONE = new Fields(new JsonObject());

    private final JsonObject json;

    private Fields(JsonObject json) {
        this.json = json;
    }

    static Fields of(JsonObject json) {
        return new Fields(json.deepCopy());
    }

    JsonObject toJson() {
        return json.deepCopy();
    }

    /** Returns whether there is nothing in it. */
    public boolean isEmpty() {
        return json.isEmpty();
    }

    /** Returns the text under a key; a list of lines counts as one text, as the format has it. */
    public Optional<String> text(String key) {
        return Optional.ofNullable(json.get(key)).flatMap(Fields::textOf);
    }

    /** Returns the texts in the list under a key; none if there is no such list. */
    public List<String> texts(String key) {
        List<String> all = new ArrayList<>();
        if (json.get(key) instanceof JsonArray array) {
            array.forEach(each -> textOf(each).ifPresent(all::add));
        }
        return List.copyOf(all);
    }

    /** Returns the object under a key; the empty one if there is none. */
    public Fields fields(String key) {
        return json.get(key) instanceof JsonObject object ? new Fields(object) : NONE;
    }

    /** Returns a copy in which the key holds the text. */
    public Fields with(String key, String text) {
        return with(key, new JsonPrimitive(text));
    }

    /** Returns a copy in which the key holds the list of texts. */
    public Fields with(String key, List<String> texts) {
        JsonArray list = new JsonArray();
        texts.forEach(list::add);
        return with(key, list);
    }

    /** Returns a copy in which the key holds the object. */
    public Fields with(String key, Fields fields) {
        return with(key, fields.toJson());
    }

    /** Returns a copy without the key. */
    public Fields without(String key) {
        if (!json.has(key)) {
            return this;
        }
        JsonObject copy = toJson();
        copy.remove(key);
        return new Fields(copy);
    }

    private Fields with(String key, JsonElement value) {
        JsonObject copy = toJson();
        copy.add(key, value);
        return new Fields(copy);
    }

    /** Returns a JSON text, or a JSON list of lines, as one text. */
    static Optional<String> textOf(JsonElement element) {
        if (element instanceof JsonPrimitive primitive && primitive.isString()) {
            return Optional.of(primitive.getAsString());
        }
        if (!(element instanceof JsonArray lines)) {
            return Optional.empty();
        }
        StringBuilder all = new StringBuilder();
        for (JsonElement line : lines) {
            if (!(line instanceof JsonPrimitive primitive && primitive.isString())) {
                return Optional.empty();
            }
            all.append(primitive.getAsString());
        }
        return Optional.of(all.toString());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Fields fields && json.equals(fields.json);
    }

    @Override
    public int hashCode() {
        return json.hashCode();
    }

    @Override
    public String toString() {
        return json.toString();
    }
}

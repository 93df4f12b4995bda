package headrace.kernel.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The metadata whose form the format prescribes. A key that breaks its form is left out, so that whatever was read is
 * written well formed; keys that the format does not know are kept untouched.
 *
 * <p>Source: nbformat 4.5, JSON schema.
 */
final class KnownMetadata {
    /** State of live controls, which can hold stored outputs; a run makes it anew. */
    private static final String WIDGETS = "widgets";

    private static final Predicate<JsonElement> TEXT = value -> value instanceof JsonPrimitive text && text.isString();

    private static final Predicate<JsonElement> SWITCH =
            value -> value instanceof JsonPrimitive primitive && primitive.isBoolean();

    private static final Predicate<JsonElement> OBJECT = JsonObject.class::isInstance;

    private static final Map<String, Predicate<JsonElement>> NOTEBOOK = Map.of(
            "kernelspec",
            value -> value instanceof JsonObject spec
                    && TEXT.test(spec.get("name"))
                    && TEXT.test(spec.get("display_name")),
            "language_info",
            value -> value instanceof JsonObject language && isLanguage(language),
            "orig_nbformat",
            value -> value instanceof JsonPrimitive number
                    && number.isNumber()
                    && number.getAsString().matches("[1-9]\\d{0,8}"),
            "title",
            TEXT,
            "authors",
            JsonArray.class::isInstance,
            WIDGETS,
            value -> false);

    private static final Map<String, Predicate<JsonElement>> ANY_CELL = Map.of(
            "name",
            value -> TEXT.test(value) && value.getAsString().matches(".+"),
            "tags",
            KnownMetadata::areTags,
            "jupyter",
            value -> OBJECT.test(value) && hiddenAreSwitches((JsonObject) value));

    private static final Map<String, Predicate<JsonElement>> CODE_CELL = Map.of(
            "collapsed",
            SWITCH,
            "scrolled",
            value -> SWITCH.test(value)
                    || TEXT.test(value) && value.getAsString().equals("auto"),
            "execution",
            value -> false);

    private static final Map<String, Predicate<JsonElement>> RAW_CELL = Map.of("format", TEXT);

    private KnownMetadata() {}

    static Fields ofNotebook(JsonObject metadata) {
        return Fields.of(keeping(metadata, NOTEBOOK));
    }

    static Fields ofCell(JsonObject metadata, String type) {
        JsonObject kept = keeping(metadata, ANY_CELL);
        if (type.equals("code")) {
            kept = keeping(kept, CODE_CELL);
        } else if (type.equals("raw")) {
            kept = keeping(kept, RAW_CELL);
        }
        return Fields.of(kept);
    }

    /** Keeps the attachments whose media types hold text, or anything where the type is one of JSON. */
    static Fields attachments(JsonObject attachments) {
        JsonObject kept = new JsonObject();
        attachments.entrySet().forEach(file -> {
            if (file.getValue() instanceof JsonObject forms
                    && forms.entrySet().stream().allMatch(KnownMetadata::isForm)) {
                kept.add(file.getKey(), forms);
            }
        });
        return Fields.of(kept);
    }

    private static boolean isForm(Map.Entry<String, JsonElement> form) {
        return MediaTypes.isJson(form.getKey())
                || Fields.textOf(form.getValue()).isPresent();
    }

    private static JsonObject keeping(JsonObject metadata, Map<String, Predicate<JsonElement>> forms) {
        JsonObject kept = new JsonObject();
        metadata.entrySet().forEach(entry -> {
            if (forms.getOrDefault(entry.getKey(), any -> true).test(entry.getValue())) {
                kept.add(entry.getKey(), entry.getValue());
            }
        });
        return kept;
    }

    private static boolean isLanguage(JsonObject language) {
        JsonElement mode = language.get("codemirror_mode");
        return TEXT.test(language.get("name"))
                && (mode == null || TEXT.test(mode) || OBJECT.test(mode))
                && textOrAbsent(language, "file_extension")
                && textOrAbsent(language, "mimetype")
                && textOrAbsent(language, "pygments_lexer");
    }

    private static boolean textOrAbsent(JsonObject object, String key) {
        return !object.has(key) || TEXT.test(object.get(key));
    }

    private static boolean hiddenAreSwitches(JsonObject jupyter) {
        return (!jupyter.has("source_hidden") || SWITCH.test(jupyter.get("source_hidden")))
                && (!jupyter.has("outputs_hidden") || SWITCH.test(jupyter.get("outputs_hidden")));
    }

    private static boolean areTags(JsonElement value) {
        if (!(value instanceof JsonArray tags)) {
            return false;
        }
        Set<String> once = new HashSet<>();
        for (JsonElement tag : tags) {
            if (!TEXT.test(tag) || !tag.getAsString().matches("[^,]+") || !once.add(tag.getAsString())) {
                return false;
            }
        }
        return true;
    }
}

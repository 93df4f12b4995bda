package headrace.kernel.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.google.gson.stream.JsonWriter;
import headrace.kernel.display.MimeBundle;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes a notebook in the format 4.5 as notebook programs do, so that comparing two versions shows only what changed:
 * keys in their usual order, a line for each line of text, an indent of one, a newline at the end.
 */
final class NotebookWriter {
    private NotebookWriter() {}

    static String write(Notebook notebook) {
        JsonObject top = new JsonObject();
        JsonArray cells = new JsonArray();
        notebook.cells().forEach(cell -> cells.add(json(cell)));
        top.add("cells", cells);
        top.add("metadata", notebook.metadata().toJson());
        top.addProperty("nbformat", 4);
        top.addProperty("nbformat_minor", 5);
        return text(top) + "\n";
    }

    private static JsonObject json(Cell cell) {
        JsonObject json = new JsonObject();
        if (cell instanceof Cell.Code code) {
            json.addProperty("cell_type", "code");
            json.add("execution_count", count(code.count()));
            json.addProperty("id", cell.id());
            json.add("metadata", cell.metadata().toJson());
            JsonArray outputs = new JsonArray();
            code.outputs().forEach(output -> outputs.add(json(output)));
            json.add("outputs", outputs);
        } else {
            Fields attachments =
                    cell instanceof Cell.Markdown text ? text.attachments() : ((Cell.Raw) cell).attachments();
            if (!attachments.isEmpty()) {
                json.add("attachments", attachments.toJson());
            }
            json.addProperty("cell_type", cell instanceof Cell.Markdown ? "markdown" : "raw");
            json.addProperty("id", cell.id());
            json.add("metadata", cell.metadata().toJson());
        }
        json.add("source", lines(cell.source()));
        return json;
    }

    private static JsonElement count(int count) {
        return count == 0 ? JsonNull.INSTANCE : new JsonPrimitive(count);
    }

    private static JsonObject json(CellOutput output) {
        JsonObject json = new JsonObject();
        if (output instanceof CellOutput.Stream stream) {
            json.addProperty("name", stream.name());
            json.addProperty("output_type", "stream");
            json.add("text", lines(stream.text()));
        } else if (output instanceof CellOutput.Shown shown) {
            json.add("data", data(shown.bundle()));
            json.add("metadata", new JsonObject());
            json.addProperty("output_type", "display_data");
        } else if (output instanceof CellOutput.Result result) {
            json.add("data", data(result.bundle()));
            json.add("execution_count", count(result.count()));
            json.add("metadata", new JsonObject());
            json.addProperty("output_type", "execute_result");
        } else if (output instanceof CellOutput.Failure failure) {
            json.addProperty("ename", failure.name());
            json.addProperty("evalue", failure.message());
            json.addProperty("output_type", "error");
            JsonArray traceback = new JsonArray();
            failure.lines().forEach(traceback::add);
            json.add("traceback", traceback);
        }
        return json;
    }

    private static JsonObject data(MimeBundle bundle) {
        JsonObject data = new JsonObject();
        new TreeMap<>(bundle.forms()).forEach((type, form) -> data.add(type, form(type, form)));
        return data;
    }

    private static JsonElement form(String type, String form) {
        if (MediaTypes.isJson(type)) {
            try {
                return JsonParser.parseString(form);
            } catch (JsonParseException e) {
                return new JsonPrimitive(form);
            }
        }
        return type.startsWith("image/") && !type.endsWith("+xml") ? new JsonPrimitive(form) : lines(form);
    }

    /** Returns the text as the format keeps it: a list of lines, each but the last with its newline. */
    private static JsonArray lines(String text) {
        JsonArray lines = new JsonArray();
        int start = 0;
        while (start < text.length()) {
            int end = text.indexOf('\n', start) + 1;
            if (end == 0) {
                end = text.length();
            }
            lines.add(text.substring(start, end));
            start = end;
        }
        return lines;
    }

    private static String text(JsonObject top) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = new JsonWriter(text)) {
            writer.setIndent(" ");
            write(top, writer);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void write(JsonElement element, JsonWriter writer) throws IOException {
        if (element instanceof JsonObject object) {
            writer.beginObject();
            for (Map.Entry<String, JsonElement> entry : object.entrySet()) {
                writer.name(entry.getKey());
                write(entry.getValue(), writer);
            }
            writer.endObject();
        } else if (element instanceof JsonArray array) {
            writer.beginArray();
            for (JsonElement each : List.copyOf(array.asList())) {
                write(each, writer);
            }
            writer.endArray();
        } else if (element instanceof JsonPrimitive primitive) {
            writePrimitive(primitive, writer);
        } else {
            writer.nullValue();
        }
    }

    private static void writePrimitive(JsonPrimitive primitive, JsonWriter writer) throws IOException {
        if (primitive.isString()) {
            writer.value(primitive.getAsString());
        } else if (primitive.isBoolean()) {
            writer.value(primitive.getAsBoolean());
        } else {
            writer.value(primitive.getAsNumber());
        }
    }
}

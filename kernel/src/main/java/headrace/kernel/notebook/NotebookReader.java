package headrace.kernel.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads one notebook text, or says where it stops being one. */
final class NotebookReader {
    private static final Pattern WHERE = Pattern.compile("at line (\\d+) column (\\d+)");

    private static final int MAJOR = 4;

    private static final int NEWEST_MINOR = 5;

    private final String text;
    private final String file;

    NotebookReader(String text, String file) {
        this.text = text;
        this.file = file;
    }

    Notebook notebook() {
        if (!(parsed() instanceof JsonObject top)) {
            throw notANotebook("This is JSON, but no object", Place.of(file));
        }
        checkFormat(top);
        if (!(top.get("cells") instanceof JsonArray array)) {
            throw notANotebook("The list of cells is missing, or is no list", Place.of(file));
        }
        List<Cell> cells = new ArrayList<>(array.size());
        for (int i = 0; i < array.size(); i++) {
            cells.add(cell(array.get(i), i));
        }
        return new Notebook(KnownMetadata.ofNotebook(objectOr(top, "metadata")), cells);
    }

    private JsonElement parsed() {
        if (text.isBlank()) {
            throw broken(new IOException("Nothing at line 1 column 1"));
        }
        JsonReader reader = new JsonReader(new StringReader(text));
        reader.setStrictness(Strictness.STRICT);
        try {
            JsonElement element = JsonParser.parseReader(reader);
            if (reader.peek() != JsonToken.END_DOCUMENT) {
                throw new JsonParseException("More text " + reader);
            }
            return element;
        } catch (IOException | JsonParseException e) {
            throw broken(e);
        }
    }

    private Refusal broken(Exception cause) {
        Matcher where = WHERE.matcher(String.valueOf(cause.getMessage()));
        Place place = where.find()
                ? new Place(file, Integer.parseInt(where.group(1)), Integer.parseInt(where.group(2)))
                : Place.of(file);
        String asked = text.isBlank() ? "The file is empty" : "Here, or just before, the JSON of the notebook breaks";
        return new Refusal(
                        NotebookProblem.BROKEN_NOTEBOOK,
                        asked,
                        "A notebook is one whole JSON object, as the program that made it wrote it",
                        "Save it anew with that program, take the last good copy, or mend the text at this place")
                .at(place);
    }

    private void checkFormat(JsonObject top) {
        if (!isWhole(top.get("nbformat"))) {
            throw notANotebook("The number \"nbformat\" is missing, or is no whole number", Place.of(file));
        }
        BigDecimal major = top.get("nbformat").getAsBigDecimal();
        BigDecimal minor = BigDecimal.ZERO;
        if (top.has("nbformat_minor")) {
            if (!isWhole(top.get("nbformat_minor"))) {
                throw notANotebook("\"nbformat_minor\" is no whole number", place("nbformat_minor"));
            }
            minor = top.get("nbformat_minor").getAsBigDecimal();
        }
        boolean reads = major.compareTo(BigDecimal.valueOf(MAJOR)) == 0
                && minor.signum() >= 0
                && minor.compareTo(BigDecimal.valueOf(NEWEST_MINOR)) <= 0;
        if (!reads) {
            throw new Refusal(
                            NotebookProblem.NOTEBOOK_FORMAT_NOT_READ,
                            "This notebook is in the format " + top.get("nbformat") + "." + minor,
                            "Headrace reads the notebook formats 4.0 to 4.5",
                            "Open it in the program that made it and save it in the format 4")
                    .at(place("nbformat"));
        }
    }

    private static boolean isWhole(JsonElement element) {
        return element instanceof JsonPrimitive number
                && number.isNumber()
                && number.getAsString().matches("-?\\d{1,9}");
    }

    private Cell cell(JsonElement element, int index) {
        if (!(element instanceof JsonObject cell)) {
            throw notANotebook("Cell " + (index + 1) + " is no object", place("cells", index));
        }
        String type = Fields.textOf(cell.get("cell_type")).orElse("");
        String source = Fields.textOf(cell.get("source"))
                .orElseThrow(() -> notANotebook(
                        "Cell " + (index + 1) + " has no text \"source\"", place("cells", index, "source")));
        String id = Fields.textOf(cell.get("id")).orElse("");
        Fields metadata = KnownMetadata.ofCell(objectOr(cell, "metadata"), type);
        return switch (type) {
            case "code" -> new Cell.Code(id, metadata, source, 0, List.of());
            case "markdown" -> new Cell.Markdown(id, metadata, source, attachments(cell));
            case "raw" -> new Cell.Raw(id, metadata, source, attachments(cell));
            default ->
                throw notANotebook(
                        "Cell " + (index + 1) + " is neither code nor markdown nor raw",
                        place("cells", index, "cell_type"));
        };
    }

    private static Fields attachments(JsonObject cell) {
        return KnownMetadata.attachments(objectOr(cell, "attachments"));
    }

    private static JsonObject objectOr(JsonObject parent, String key) {
        return parent.get(key) instanceof JsonObject object ? object : new JsonObject();
    }

    private Place place(Object... path) {
        return JsonPlaces.of(text, file, path);
    }

    private static Refusal notANotebook(String asked, Place place) {
        return new Refusal(
                        NotebookProblem.NOT_A_NOTEBOOK,
                        asked,
                        "A notebook is a JSON object with \"nbformat\", \"nbformat_minor\", \"metadata\" and \"cells\"",
                        "Name a notebook file, or a script whose name ends in .groovy")
                .at(place);
    }
}

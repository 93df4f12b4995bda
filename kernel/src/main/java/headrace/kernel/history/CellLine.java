package headrace.kernel.history;

import com.google.gson.JsonArray;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A cell as a line of a file: an array of its number, its text and its result, in JSON. */
final class CellLine {
    /** A longer result is a table that nobody looks for in a history. */
    private static final int MOST_OF_A_RESULT = 2_000;

    private CellLine() {}

    static String of(int count, String code, String result) {
        JsonArray line = new JsonArray();
        line.add(count);
        line.add(code);
        line.add(result.length() > MOST_OF_A_RESULT ? "" : result);
        return line + "\n";
    }

    /** Reads the cells of a session. A line that is no cell, such as one that was cut off, is passed over. */
    static List<PastCell> read(int session, Path file) {
        List<PastCell> cells = new ArrayList<>();
        try {
            String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
            text.lines().forEach(line -> read(session, line, cells));
        } catch (IOException gone) {
            return cells; // thinned out by another kernel
        }
        return cells;
    }

    private static void read(int session, String line, List<PastCell> cells) {
        try {
            JsonArray cell = JsonParser.parseString(line).getAsJsonArray();
            cells.add(new PastCell(
                    session,
                    cell.get(0).getAsInt(),
                    cell.get(1).getAsString(),
                    cell.get(2).getAsString()));
        } catch (JsonParseException
                | IllegalStateException
                | UnsupportedOperationException
                | NumberFormatException
                | IndexOutOfBoundsException noCell) {
            return;
        }
    }
}

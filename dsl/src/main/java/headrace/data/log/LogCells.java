package headrace.data.log;

import java.util.ArrayList;
import java.util.List;

/** Reads cells off a buffer by RFC 4180: one that starts with a quotation mark ends with one, doubled ones inside. */
final class LogCells {
    private final LogBuffer buffer;
    private final byte separator;

    LogCells(LogBuffer buffer, char separator) {
        this.buffer = buffer;
        this.separator = (byte) separator;
    }

    /** Reads the cell at hand and stands behind it: at a separator or a line end. */
    String text() {
        int start = blanks(buffer.at);
        if (buffer.bytes[start] != '"') {
            int end = plainEnd(start);
            buffer.at = end;
            return buffer.text(start, end).strip();
        }
        int line = buffer.line;
        StringBuilder text = new StringBuilder();
        int from = start + 1;
        for (int i = from; i < buffer.end; i++) {
            if (buffer.bytes[i] == '\n') {
                buffer.line++;
            } else if (buffer.bytes[i] == '"') {
                text.append(buffer.text(from, i));
                if (buffer.bytes[i + 1] != '"') {
                    buffer.at = plainEnd(i + 1);
                    return text.append(buffer.text(i + 1, buffer.at).strip()).toString();
                }
                from = ++i;
            }
        }
        throw buffer.endless(line);
    }

    /** Stands behind the cell at hand without looking at it. */
    void skip() {
        int start = blanks(buffer.at);
        if (buffer.bytes[start] == '"') {
            text();
        } else {
            buffer.at = plainEnd(start);
        }
    }

    /** Reads the cells of a whole row and stands at the next. */
    List<String> row() {
        List<String> cells = new ArrayList<>(List.of(text()));
        while (buffer.at < buffer.end && buffer.bytes[buffer.at] == separator) {
            buffer.at++;
            cells.add(text());
        }
        buffer.endRow();
        return cells;
    }

    private int blanks(int from) {
        int i = from;
        while ((buffer.bytes[i] == ' ' || buffer.bytes[i] == '\t') && buffer.bytes[i] != separator) {
            i++;
        }
        return i;
    }

    private int plainEnd(int from) {
        int i = from;
        while (buffer.bytes[i] != separator && !LogBuffer.ends(buffer.bytes[i])) {
            i++;
        }
        return Math.min(i, buffer.end);
    }
}

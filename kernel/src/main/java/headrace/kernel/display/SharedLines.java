package headrace.kernel.display;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;

/**
 * The lines of many texts that are mostly alike, such as a drawing at each position of a slider: each line is kept
 * once, and a text is the numbers of its lines.
 */
final class SharedLines {
    private final Map<String, Integer> numbers = new LinkedHashMap<>();

    /** Keeps a text, and returns the numbers of its lines, such as {@code 0-17 40 19-32}. */
    String keep(String text) {
        List<String> ranges = new ArrayList<>();
        int from = -1;
        int to = -1;
        for (String line : text.split("\n", -1)) {
            int number = numbers.computeIfAbsent(line, unknown -> numbers.size());
            if (from >= 0 && number == to + 1) {
                to = number;
                continue;
            }
            if (from >= 0) {
                ranges.add(range(from, to));
            }
            from = number;
            to = number;
        }
        ranges.add(range(from, to));
        return String.join(" ", ranges);
    }

    /** Returns all lines in order, packed by gzip and written in base64. */
    String packed() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(bytes)) {
            zip.write(String.join("\n", numbers.keySet()).getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }

    private static String range(int from, int to) {
        return from == to ? Integer.toString(from) : from + "-" + to;
    }
}
